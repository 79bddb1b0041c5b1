import "../controls-on.js";
import "../edition.js";
import "../class-set.js";
import "../page-runs.js";
