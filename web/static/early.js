// What can be said before any module runs (this is a classic script on purpose): a page opened from a
// disk cannot load modules at all, and a part that is missing on the server stops boot.js unheard.
(function () {
  "use strict";
  function show(id) {
    var notice = document.getElementById(id);
    if (notice) notice.hidden = false;
    var opening = document.getElementById("opening");
    if (opening) opening.hidden = true;
  }
  function when_there(act) {
    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", act);
    else act();
  }
  if (location.protocol === "file:") {
    when_there(function () { show("needs-server"); });
    return;
  }
  window.addEventListener("error", function (event) {
    // Only a script that failed to load arrives with an element as its target.
    if (event.target && event.target.tagName === "SCRIPT") when_there(function () { show("part-missing"); });
  }, true);
})();
