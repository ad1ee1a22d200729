"""Writes manifest.json: the version of the suite, and of each file its SHA-256
and how many vectors it holds. Run from testdata, after the generators:

    python3 generate/manifest.py
"""

import hashlib
import json
import os

VERSION = "1.3.0"
TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
OTHERS = {"manifest.json"}


def entry(name):
    with open(os.path.join(TOP, name), "rb") as f:
        text = f.read()
    count = json.loads(text).get("count", 0) if name.endswith(".json") else 0
    return {"name": name, "sha256": hashlib.sha256(text).hexdigest(), "count": count}


names = sorted(n for n in os.listdir(TOP) if n.endswith((".json", ".txt")) and n not in OTHERS)
files = [entry(n) for n in names]
with open(os.path.join(TOP, "manifest.json"), "w", encoding="utf-8", newline="\n") as f:
    f.write('{"version":%s,"count":%d,"files":[\n' % (json.dumps(VERSION), sum(e["count"] for e in files)))
    f.write(",\n".join(json.dumps(e, separators=(",", ":")) for e in files))
    f.write("\n]}\n")
print("%d files, %d vectors" % (len(files), sum(e["count"] for e in files)))
