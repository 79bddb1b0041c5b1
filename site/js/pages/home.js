import "../controls-on.js";
import "../edition.js";
import "../home.js";
import "../page-runs.js";
