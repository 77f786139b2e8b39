#!/usr/bin/env python3
"""What `cmake --install` puts beside the window: the entry, the description, the icon and the kinds of files, each
as the desktop's own programs see it; and the kinds hold for files that Pantile writes.
usage: installed.py PANTILE BUILD-FOLDER PICTURE"""
import os
import shutil
import sqlite3
import subprocess
import sys
import xml.etree.ElementTree as xml

from needed import needed
from program import check, library, pantile, place

needed("desktop-file-utils", program="desktop-file-validate")
needed("appstream", program="appstreamcli")
needed("shared-mime-info", program="update-mime-database")
needed("libglib2.0-bin", program="gio")

build = sys.argv[2]


def run(*command):
    folders = {"XDG_DATA_HOME": place("usr/share"), "XDG_DATA_DIRS": "/usr/share"}
    done = subprocess.run(command, capture_output=True, text=True, env=os.environ | folders)
    check(done.returncode == 0, f"{' '.join(command)}\n{done.stdout}{done.stderr}")
    return done.stdout


run("cmake", "--install", build, "--prefix", place("usr"), "--component", "desktop")


def installed(path):
    whole = place(os.path.join("usr", path))
    check(os.path.isfile(whole), f"{path} is installed")
    return whole


# What is found by its name is there.
entry = installed("share/applications/pantile-desktop.desktop")
said = dict(line.split("=", 1) for line in open(entry, encoding="utf-8") if "=" in line)
installed("bin/" + said["Exec"].split()[0])
icon = xml.parse(installed(f"share/icons/hicolor/scalable/apps/{said['Icon'].strip()}.svg")).getroot()
check(icon.get("viewBox") == "0 0 20 20", "the icon is drawn on the grid of all our signs")

# The programs of freedesktop.org that decide what is right.
run("desktop-file-validate", entry)
# The project has no domain to call the program by, and takes no one else's.
run("appstreamcli", "validate", "--no-net", "--override=cid-desktopapp-is-not-rdns=info",
    installed("share/metainfo/pantile-desktop.metainfo.xml"))
kinds = installed("share/mime/packages/pantile.xml")
run("update-mime-database", place("usr/share/mime"))
for kind in said["MimeType"].strip().strip(";").split(";"):
    installed(f"share/mime/{kind}.xml")

# The kinds of what Pantile writes, as GLib's reader of them tells them by the first bytes alone.
pantile("add", sys.argv[3])
pantile("export", "all", "--as", "json", "--into", place("out"))
pantile("load", "make", "evening", "1", "--board", "flash-32k")
pantile("load", "write", "evening", "--into", place("load"), "--as", "card")
with sqlite3.connect(place("foreign.db")) as foreign:
    foreign.execute("CREATE TABLE shingle (cell)")
for path, kind in ((library, "application/x-pantile-library"),
                   (place("out/library.json"), "application/x-pantile-library+json"),
                   (place("load/evening/load.bin"), "application/x-pantile-load"),
                   (place("foreign.db"), "application/vnd.sqlite3")):
    unnamed = place("unnamed")
    shutil.copyfile(path, unnamed)
    told = run("gio", "info", "--attributes=standard::content-type", unnamed)
    check(told.rstrip().endswith(f"standard::content-type: {kind}"), f"{path} is {kind}:\n{told}")
