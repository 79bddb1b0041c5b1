import "../controls-on.js";
import "../edition.js";
import "../practice.js";
import "../page-runs.js";
