"""What a page says where its own scripts do not come, or its browser cannot run them."""

LATE = "The fields and buttons are off until all of this page has loaded. That takes longer than usual."
MISSING = "A part of this site did not load: {file}. So the fields and buttons are off."
BROKEN = "A script of this page did not run: {file}. So the fields and buttons are off."
PAGE = "the page itself"
RELOAD = "Load the page again. If that does not help, tell the people who run this site."
OLD = "This browser cannot run the calculator. It lacks: {needed}."
NEWER = "Update it, or use a newer one: Chrome or Edge 105, Firefox 115, Safari 17.4, or any later version."
POLICY = "Is the browser new? Then a security mode, or a rule of your school, may have turned WebAssembly off."
NEEDED = {
    "script": "today’s JavaScript",
    "wasm": "WebAssembly",
    "workers": "work in the background",
    "streams": "streams",
    "dialogs": "dialogs",
}
"""By what the start looks for."""
FILE = "This page was opened as a file. A browser runs it only from a web server."
SERVE = "In the folder of the site run: python3 -m http.server 8000. Then open http://127.0.0.1:8000 in the browser."
EXAMPLE = "What you see is the page’s own example. You can read it, and print it from the browser’s menu."
LINK = "What your link asks for cannot be shown. Keep the link: it works again when the page does."
NO_PAGE = "There is no page here"
NO_PAGE_LEAD = "The address may be mistyped, or the page has moved. The pages of this site are listed below."
AGAIN = "Load the page again"
