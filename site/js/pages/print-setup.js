import "../edition.js";
import "../print-setup.js";
