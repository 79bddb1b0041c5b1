import "../controls-on.js";
import "../edition.js";
import "../this-device.js";
import "../page-runs.js";
