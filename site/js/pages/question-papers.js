import "../controls-on.js";
import "../edition.js";
import "../question-paper.js";
import "../page-runs.js";
