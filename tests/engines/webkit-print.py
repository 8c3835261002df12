# Prints a page with WebKitGTK to a PDF, A4: its driver knows no command for it. webkit-print.py ADDRESS FILE
import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import GLib, Gtk, WebKit2  # noqa: E402

address, file = sys.argv[1:3]
# What a page does by itself once it is loaded: its answer is worked out.
WAIT_MS = 4000

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


def changed(_, event):
    if event == WebKit2.LoadEvent.FINISHED:
        GLib.timeout_add(WAIT_MS, print_page)


view.connect("load-changed", changed)
view.load_uri(address)
Gtk.main()
