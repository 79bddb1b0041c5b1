import "../edition.js";
import "../page.js";
import "../sheet-device.js";
