import "../controls-on.js";
import "../edition.js";
import "../print-setup.js";
import "../page-runs.js";
