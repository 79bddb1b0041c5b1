import "../controls-on.js";
import "../edition.js";
import "../page-runs.js";
