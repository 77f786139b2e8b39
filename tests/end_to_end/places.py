#!/usr/bin/env python3
"""No language, country, time zone or order of hashing changes what the program writes: the same work done in three
places gives the same answers and the same bytes of every file. Only times differ, and those are checked against the clock.
usage: places.py PANTILE PICTURE"""
import datetime
import os
import re
import subprocess
import sys
import tempfile

from needed import needed

needed("locales", path="/usr/share/i18n/locales/tr_TR")
needed("tzdata", path="/usr/share/zoneinfo/Pacific/Kiritimati")

program, picture = sys.argv[1:3]
# Turkish has letters i of its own, German writes commas in decimals.
PLACES = (("C.UTF-8", "UTC"), ("tr_TR", "Pacific/Kiritimati"), ("de_DE", "America/St_Johns"))
WORK = (
    ("add", picture, "--title", "INK in the Iris", "--tag", "tide", "--tag", "İris"),
    ("set", "1", "--stars", "3"),
    ("touch", "1", "--mirror", "left-right"),
    ("find", "iris tag:TIDE"),
    ("show", "1"),
    ("plan", "1"),
    ("code", "1"),
    ("board", "add", "quay", "--slots", "2", "--bytes", "20000", "--memory", "card"),
    ("fit", "all", "--board", "quay", "--worth", "1=25"),
    ("load", "make", "evening", "1", "--board", "quay"),
    ("load", "write", "evening", "--into", "out", "--as", "both"),
    ("export", "all", "--as", "csv", "--into", "out"),
    ("export", "all", "--as", "json", "--into", "out"),
    ("--json", "show", "1"),
    ("history",),
)
begun = datetime.datetime.now(datetime.timezone.utc)


def without_times(text):
    """The text with its times left out, which have to be those of now, in UTC."""
    def now(found):
        told = datetime.datetime.fromisoformat(found[0].replace("Z", "+00:00"))
        assert abs((told - begun).total_seconds()) < 600, f"{found[0]} is not now in UTC"
        return "NOW"

    def epoch(found):
        assert abs(int(found[1]) - begun.timestamp()) < 600, f"{found[0]} is not now"
        return found[0].replace(found[1], "NOW")
    text = re.sub(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", now, text)
    return re.sub(r'"(?:added|changed|at|made)": ?(\d{10})\b', epoch, text)


def work_in(locales, language, zone):
    with tempfile.TemporaryDirectory() as folder:
        settings = {"LC_ALL": language, "LANG": language, "LOCPATH": locales, "TZ": zone}
        if language == "C.UTF-8":
            del settings["LOCPATH"]
            settings["QT_HASH_SEED"] = "0"
        answers = []
        for words in WORK:
            done = subprocess.run([program, "--library", "library.db", *words], cwd=folder, text=True, encoding="utf-8",
                                  env=os.environ | settings, capture_output=True)
            answers.append((words, done.returncode, without_times(done.stdout), done.stderr))
            if done.returncode:
                sys.exit(f"{words} in {language}: {done.stdout}{done.stderr}")
        files = {}
        for place, _, names in os.walk(os.path.join(folder, "out")):
            for name in names:
                content = open(os.path.join(place, name), "rb").read()
                files[os.path.relpath(os.path.join(place, name), folder)] = without_times(content.decode("latin-1").replace(folder, "HERE"))
        return answers, files


with tempfile.TemporaryDirectory() as locales:
    for language, _ in PLACES[1:]:
        subprocess.run(["localedef", "-i", language, "-f", "UTF-8", os.path.join(locales, language)], check=True)
    first, *others = [work_in(locales, *place) for place in PLACES]
assert len(first[1]) >= 4, f"files were written: {list(first[1])}"
for (language, zone), (answers, files) in zip(PLACES[1:], others):
    for here, there in zip(first[0], answers):
        assert here == there, f"{language}, {zone}: {there}\nnot {here}"
    assert files.keys() == first[1].keys(), (language, files.keys())
    for name, content in files.items():
        differences = [pair for pair in zip(content.splitlines(), first[1][name].splitlines()) if pair[0] != pair[1]]
        assert content == first[1][name], f"{name} differs in {language}, {zone}: {differences[:3]}"
print(f"{len(WORK)} commands and {len(first[1])} files are the same in {len(PLACES)} places")
