import "../controls-on.js";
import "../edition.js";
import "../college-settings.js";
import "../page-runs.js";
