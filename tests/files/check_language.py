#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every text of core/ and app/ has its Spanish, with the same holes and edges, and no Spanish is left of texts that are
no longer said. Usage: check_language.py SOURCE"""
import re
import subprocess
import sys
import tempfile

import polib

source = sys.argv[1]
with tempfile.NamedTemporaryFile(suffix=".pot") as template:
    subprocess.run([source + "/packaging/collect-words", template.name], check=True)
    said = {(e.msgctxt, e.msgid) for e in polib.pofile(template.name)}
catalogue = polib.pofile(source + "/resources/language/es.po")
spanish = {(e.msgctxt, e.msgid): e.msgstr for e in catalogue if not e.obsolete}


def holes(text):
    """How many parts go in, and which of Qt's."""
    return len(re.findall(r"\{[1-9]?\}", text)), sorted(set(re.findall(r"%[1-9n]", text)))


def edges(text):
    return len(text) - len(text.lstrip()), len(text) - len(text.rstrip())


wrong = []
for key in sorted(said, key=str):
    english, text = key[1], spanish.get(key, "")
    if not text:
        wrong.append(f"no Spanish: {english!r}")
    elif holes(english) != holes(text):
        wrong.append(f"other holes: {english!r} {text!r}")
    elif edges(english) != edges(text):
        wrong.append(f"other edges: {english!r} {text!r}")
    elif "{}" in text and re.search(r"\{[1-9]\}", text):
        wrong.append(f"numbered and unnumbered holes: {text!r}")
wrong += [f"no longer said: {key[1]!r}" for key in sorted(spanish.keys() - said, key=str)]
print(f"{len(said)} texts, {len(wrong)} wrong")
print("\n".join(wrong[:200]))
sys.exit(1 if wrong else 0)
