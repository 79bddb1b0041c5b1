import "../edition.js";
import "../class-set.js";
