# Prints a page with WebKitGTK to a PDF, A4: its driver knows no command for it. webkit-print.py ADDRESS FILE SELECTOR
import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import GLib, Gtk, WebKit2  # noqa: E402

# Printed once the page shows what the selector finds, and the faces that come after it are there.
address, file, selector = sys.argv[1:4]
LOOK_MS = 500
FACES_MS = 3000

view = WebKit2.WebView()
window = Gtk.OffscreenWindow()
window.set_default_size(390, 780)
window.add(view)
window.show_all()


def print_page():
    settings = Gtk.PrintSettings()
    settings.set(Gtk.PRINT_SETTINGS_PRINTER, "Print to File")
    settings.set(Gtk.PRINT_SETTINGS_OUTPUT_FILE_FORMAT, "pdf")
    settings.set(Gtk.PRINT_SETTINGS_OUTPUT_URI, GLib.filename_to_uri(file, None))
    page = Gtk.PageSetup()
    page.set_paper_size(Gtk.PaperSize.new("iso_a4"))
    operation = WebKit2.PrintOperation.new(view)
    operation.set_print_settings(settings)
    operation.set_page_setup(page)
    operation.connect("finished", lambda _: Gtk.main_quit())
    operation.connect("failed", lambda _, error: sys.exit(error.message))
    operation.print_()
    return False


def found(_, result):
    try:
        there = view.evaluate_javascript_finish(result).to_boolean()
    except GLib.Error as error:
        sys.exit(error.message)
    if there:
        GLib.timeout_add(FACES_MS, print_page)
    else:
        GLib.timeout_add(LOOK_MS, look)


def look():
    asked = f"document.querySelector({selector!r}) !== null"
    view.evaluate_javascript(asked, -1, None, None, None, found)
    return False


def changed(_, event):
    if event == WebKit2.LoadEvent.FINISHED:
        look()


view.connect("load-changed", changed)
view.load_uri(address)
Gtk.main()
