import "../controls-on.js";
import "../edition.js";
import "../paper.js";
import "../sheet-device.js";
import "../page-runs.js";
