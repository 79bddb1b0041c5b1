// Written into every page with fields, before all else: it watches that the page's own scripts come and run. The build
// gives fields and buttons turned off (pages.py); the page's first module turns them on (controls-on.js). If it does not
// come, they stay off, and the page says what is wrong and what helps. So nobody sees a value beside an answer that is
// not its own. `<html data-script="awaited|begun|runs|stopped">` says how far it is. A link that opens the page is noted, so
// that nothing of the example is seen in the place of its problem (opening.js).
// In the language of the oldest browsers, which read nothing else of this site.
(function () {
  "use strict";
  var LATE = 5000; // ms after which it is said what the fields wait for
  var NAMED = 300; // ms after the page's load event in which a browser still says which file failed
  var root = document.documentElement;
  var meta = document.querySelector("meta[name=words-of-the-start]");
  if (!meta) return;
  var words = JSON.parse(meta.getAttribute("content") || "{}");
  /** @type {HTMLElement | null} */
  var notice = null;

  function state() {
    return root.getAttribute("data-script");
  }

  // Each thing without which the page cannot calculate, by the name of its words.
  /** @type {Record<string, () => boolean>} */
  var NEEDED = {
    script: function () {
      var found = [Object.hasOwn, [].at, "".replaceAll, AbortSignal.timeout, root.checkVisibility];
      return "noModule" in document.createElement("script") && found.every(Boolean);
    },
    wasm: function () {
      // A function that catches an exception: browsers before 2022 know none.
      var bytes = [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 10, 8, 1, 6, 0, 6, 64, 25, 11, 11];
      return Boolean(WebAssembly.compileStreaming) && WebAssembly.validate(new window.Uint8Array(bytes));
    },
    workers: function () {
      return Boolean(window.Worker);
    },
    streams: function () {
      return Boolean(window.ReadableStream) && "body" in Response.prototype;
    },
    dialogs: function () {
      return Boolean(HTMLDialogElement.prototype.showModal);
    },
  };

  function lacking() {
    return Object.keys(NEEDED).filter(function (name) {
      try {
        return !NEEDED[name]();
      } catch (_error) {
        return true;
      }
    });
  }

  // What works without a module of the page stays: light and dark, the menu, loading again.
  function turnOff() {
    var controls = document.querySelectorAll("button:not([data-theme-switch]):not([popovertarget]), input, select, textarea");
    for (var at = 0; at < controls.length; at++) {
      if (!controls[at].hasAttribute("data-start-again")) controls[at].setAttribute("disabled", "");
    }
    // What a browser has kept of an earlier visit is no value of the example.
    for (var form = 0; form < document.forms.length; form++) document.forms[form].reset();
  }

  // A site that is kept on the device would come back as it is: with a network it is left for the host's.
  function again() {
    function leave() {
      location.reload();
    }
    try {
      setTimeout(leave, 3000);
      fetch(String(root.getAttribute("data-edition")), { cache: "no-store" }).then(function (response) {
        if (!response.ok) return leave();
        return navigator.serviceWorker.getRegistration().then(function (found) {
          return found && found.unregister();
        }).then(leave);
      }).catch(leave);
    } catch (_error) {
      leave();
    }
  }

  /** @param {string[]} sentences @param {boolean} mayHelp */
  function say(sentences, mayHelp) {
    if (!document.body) {
      setTimeout(function () {
        say(sentences, mayHelp);
      }, 20);
      return;
    }
    if (notice && notice.parentNode) notice.parentNode.removeChild(notice);
    var place = document.createElement("div");
    notice = place;
    notice.className = "edition start-notice";
    notice.setAttribute("role", "alert");
    notice.setAttribute("data-start-notice", "");
    sentences.forEach(function (sentence) {
      place.appendChild(document.createElement("p")).textContent = sentence;
    });
    if (mayHelp) {
      var button = place.appendChild(document.createElement("button"));
      button.type = "button";
      button.textContent = words.again;
      button.setAttribute("data-start-again", "");
      button.onclick = again;
    }
    document.body.insertBefore(place, document.body.firstChild);
  }

  /** @param {string[]} sentences @param {boolean} mayHelp whether loading the page again may */
  function stop(sentences, mayHelp) {
    if (state() === "stopped") return;
    root.setAttribute("data-script", "stopped");
    turnOff();
    // What is still to come of the page, and what the browser fills in after it.
    document.addEventListener("DOMContentLoaded", turnOff);
    window.addEventListener("pageshow", turnOff);
    say(sentences.concat(root.hasAttribute("data-opening") ? words.link : words.example), mayHelp);
  }

  /** @param {string} sentence @param {string} address */
  function fault(sentence, address) {
    var file = String(address || "").split(/[?#]/)[0].split("/").pop();
    stop([sentence.replace("{file}", file || words.page), words.reload], true);
  }

  // What a browser's own extensions put into the page, and what becomes of it, is no matter of ours.
  /** @param {string} address */
  function isOurs(address) {
    var worker = document.createElement("a");
    worker.href = String(root.getAttribute("data-edition"));
    return address.indexOf(worker.href.replace(/[^/]*$/, "")) === 0 && /\.(js|css)$/.test(address);
  }

  root.setAttribute("data-script", "awaited");
  // The problem of this device's own record, too, is another than the one that was built.
  if (/[^#&=]=[^&]/.test(location.hash) || root.hasAttribute("data-own-problem")) root.setAttribute("data-opening", "unread");
  if (location.protocol === "file:") {
    stop([words.file, words.serve], false);
    return;
  }
  var lacks = lacking();
  if (lacks.length) {
    var names = lacks.map(function (name) {
      return words.needed[name];
    });
    var policy = lacks.indexOf("wasm") < 0 ? [] : [words.policy];
    stop([words.old.replace("{needed}", names.join(", ")), words.newer].concat(policy), false);
    return;
  }

  // The page's style comes to nothing when its script runs already: it too hides what is not to be seen.
  var loaded = false;
  window.addEventListener("error", function (event) {
    var from = /** @type {any} */ (event.target);
    var isStyle = from && from.rel === "stylesheet";
    var loads = from && (from.tagName === "SCRIPT" || isStyle);
    if (isStyle ? loaded : state() === "runs") return;
    var address = String((loads ? from.src || from.href : event.filename) || "");
    if (isOurs(address)) fault(loads ? words.missing : words.broken, address);
  }, true);
  window.addEventListener("load", function () {
    loaded = true;
    setTimeout(function () {
      if (state() === "runs") return;
      // Cut off where a statement ends, a script has no fault: the page's own is its last module.
      var modules = document.querySelectorAll("script[type=module][src]:not([async])");
      var own = modules[modules.length - 1];
      fault(own ? words.broken : words.missing, own ? String(own.getAttribute("src")) : "");
    }, NAMED);
  });
  setTimeout(function () {
    if (state() === "awaited") say([words.late], false);
  }, LATE);
})();
