import "../edition.js";
import "../paper.js";
import "../sheet-device.js";
