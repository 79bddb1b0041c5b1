import "../controls-on.js";
import "../edition.js";
import "../pile.js";
import "../page-runs.js";
