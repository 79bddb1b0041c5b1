import "../edition.js";
import "../home.js";
