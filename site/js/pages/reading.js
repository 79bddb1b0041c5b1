import "../edition.js";
