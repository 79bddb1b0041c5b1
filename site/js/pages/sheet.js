import "../controls-on.js";
import "../edition.js";
import "../embedded.js";
import "../page.js";
import "../sheet-device.js";
import "../page-runs.js";
