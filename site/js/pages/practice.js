import "../edition.js";
import "../practice.js";
