import "../controls-on.js";
import "../edition.js";
import "../register.js";
import "../page-runs.js";
