"""Packets by other people's programs: what a reader without eavebook would find.

    python outside.py EAVEBOOK

Makes a packet of the pretend house for every reader and looks at each file with a program that is not ours. The last
line counts what was looked at. Common programs: unzip, sha256sum, qpdf, pdftotext, pdffonts; from the package index of
Python: bagit, pikepdf, ezdxf.
"""

import csv
import html.parser
import io
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import warnings
import xml.etree.ElementTree
import zipfile

import bagit
import ezdxf
import pikepdf

# The one way to a page's pictures that all versions of pikepdf have is called old by the newest.
warnings.simplefilter("ignore", DeprecationWarning)

EDITIONS = ["owner", "crew", "firm", "supplier", "permit"]
NO_MONEY = ["crew", "order", "permit", "photos", "story"]
looked_at = 0


def holds(what, said):
    """Counts one thing that was looked at, and stops where it does not hold."""
    global looked_at
    looked_at += 1
    if not what:
        sys.exit(f"FAILED: {said}")


def run(*words, where=None):
    done = subprocess.run(words, cwd=where, capture_output=True, text=True)
    holds(done.returncode == 0, f"{' '.join(map(str, words))}: {done.stdout[-500:]}{done.stderr[-500:]}")
    return done.stdout


class Links(html.parser.HTMLParser):
    def __init__(self):
        super().__init__()
        self.tags, self.links, self.text = [], [], []

    def handle_starttag(self, tag, attributes):
        self.tags.append(tag)
        self.links += [value for name, value in attributes if name in ("href", "src")]

    def handle_data(self, data):
        self.text.append(data)


def structure(node, found, depth=0):
    """Walks the tags of a PDF: names of elements, figures without words, head cells."""
    if isinstance(node, pikepdf.Array):
        for kid in node:
            structure(kid, found, depth)
    elif isinstance(node, pikepdf.Dictionary):
        name = str(node.get("/S", ""))
        if name:
            found["names"].append(name)
            if name == "/Figure" and not str(node.get("/Alt", "")).strip():
                found["mute figures"] += 1
        if "/K" in node and depth < 200:
            structure(node.K, found, depth + 1)


def drawn(page):
    """Operators that draw outside of any mark: neither tagged nor ornament."""
    depth, loose = 0, 0
    for operands, operator in pikepdf.parse_content_stream(page):
        operator = str(operator)
        if operator in ("BMC", "BDC"):
            depth += 1
        elif operator == "EMC":
            depth -= 1
        elif operator in ("Tj", "TJ", "'", '"', "Do", "S", "s", "f", "F", "f*", "B", "B*", "b", "b*", "sh") and depth == 0:
            loose += 1
    return loose


def paper(path, row, money):
    run("qpdf", "--check", path)
    text = run("pdftotext", "-layout", path, "-")
    holds(len(text.split()) >= 15, f"{path} has fewer than 15 words")
    kind = row["role"]
    wanted = "versión 1" if row["lang"] == "es" else "version 1"
    holds(wanted in text, f"{path} does not say {wanted}")
    fonts = [line.split() for line in run("pdffonts", path).splitlines()[2:]]
    holds(fonts, f"{path} has no font")
    for words in fonts:
        emb, sub, uni = words[-5:-2]
        holds((emb, uni) == ("yes", "yes"), f"{path}: font {words[0]} embedded {emb}, text map {uni}")
    if kind in NO_MONEY:
        for word in ["$", "price", "margin", "precio", "margen"]:
            holds(word not in text.lower(), f"{path} holds {word}")
        holds(not row["money"], f"{path} is listed as holding money")
    with pikepdf.open(path) as pdf:
        root = pdf.Root
        holds(root.MarkInfo.Marked, f"{path} is not marked")
        holds(str(root.Lang) == {"en": "en-US", "es": "es-US"}[row["lang"]], f"{path} has the language {root.Lang}")
        holds(root.ViewerPreferences.DisplayDocTitle, f"{path} does not show its title")
        found = {"names": [], "mute figures": 0}
        structure(root.StructTreeRoot.K, found)
        names = found["names"]
        holds(found["mute figures"] == 0, f"{path} has a figure without words")
        headings = [int(name[2:]) for name in names if re.fullmatch(r"/H[1-6]", name)]
        holds(headings[:1] == [1] and headings.count(1) == 1, f"{path} has headings {headings}")
        holds(all(b - a <= 1 for a, b in zip(headings, headings[1:])), f"{path} skips a level: {headings}")
        holds(("/Table" in names) == ("/TH" in names), f"{path} has a table without head cells")
        holds(sum(map(drawn, pdf.pages)) == 0, f"{path} draws something that is neither tagged nor ornament")
        meta = pdf.open_metadata()
        holds(meta.get("pdfuaid:part") == "1", f"{path} does not say that it is tagged for screen readers")
        holds((meta.get("pdfaid:part"), meta.get("pdfaid:conformance")) == ("2", "A"), f"{path} is no PDF/A-2a by its own word")
        for page in pdf.pages:
            for name, image in page.images.items():
                if image.get("/Filter") == pikepdf.Name.DCTDecode:
                    bytes_ = image.read_raw_bytes()
                    holds(b"Exif" not in bytes_ and b"http" not in bytes_, f"{path}: {name} carries camera data")


def table(path):
    raw = path.read_bytes()
    holds(b"\n" not in raw.replace(b"\r\n", b""), f"{path} has a line that does not end in CR LF")
    rows = list(csv.reader(io.StringIO(raw.decode()), strict=True))
    holds(rows and all(len(row) == len(rows[0]) for row in rows), f"{path} has rows of several lengths")
    cells = [cell for row in rows[1:] for cell in row]
    numbers = re.compile(r"-?\d+(\.\d+)?")
    holds(all(not cell.startswith(tuple("=+@\t")) for cell in cells), f"{path} has a cell that would be worked out")
    holds(all(numbers.fullmatch(cell) for cell in cells if cell.startswith("-")), f"{path} has a cell that begins with -")


def packet(zip_path, edition, eavebook):
    run("unzip", "-t", zip_path)
    said = run(eavebook, "packet", "--check", zip_path)
    holds(edition in said or said.strip(), f"--check says nothing of {zip_path}")
    with zipfile.ZipFile(zip_path) as zipped:
        names = zipped.namelist()
        holds(names == sorted(names), f"{zip_path} is not in the order of its paths")
        holds({info.date_time for info in zipped.infolist()} == {(1980, 1, 1, 0, 0, 0)}, f"{zip_path} holds a time")
        holds(not any(info.extra for info in zipped.infolist()), f"{zip_path} has extra fields")
    with tempfile.TemporaryDirectory() as folder:
        run("unzip", "-q", zip_path, "-d", folder)
        (bag,) = pathlib.Path(folder).iterdir()
        run("sha256sum", "--check", "--strict", "--quiet", "manifest-sha256.txt", where=bag)
        run("sha256sum", "--check", "--strict", "--quiet", "tagmanifest-sha256.txt", where=bag)
        holds(bagit.Bag(str(bag)).is_valid(), f"{zip_path} is no valid bag")
        listed = json.loads((bag / "data/packet.json").read_text())
        there = sorted(str(path.relative_to(bag)) for path in (bag / "data").rglob("*") if path.is_file())
        holds(sorted(row["path"] for row in listed["files"]) == there, f"{zip_path} lists other files than it holds")
        page = Links()
        start = (bag / "data/START-HERE.html").read_text()
        page.feed(start)
        holds("script" not in page.tags, "START-HERE has a script")
        for link in page.links:
            holds((bag / "data" / link).is_file(), f"START-HERE leads to {link}")
        words = " ".join("".join(page.text).split())
        for one in listed["not_known"] + [lack["what"] for lack in listed["lacks"]]:
            holds(" ".join(one.split()) in words, f"START-HERE does not say: {one}")
        for row in listed["files"]:
            path = bag / row["path"]
            if path.suffix == ".pdf":
                paper(path, row, listed)
            elif path.suffix == ".csv":
                table(path)
            elif path.suffix == ".svg":
                tree = xml.etree.ElementTree.parse(path)
                space = "{http://www.w3.org/2000/svg}"
                holds(tree.find(f"{space}title") is not None and tree.find(f"{space}desc") is not None, f"{path} has no title or desc")
                holds(tree.findall(f".//{space}text"), f"{path} has no text")
            elif path.suffix == ".dxf":
                drawing = ezdxf.readfile(path)
                audit = drawing.audit()
                holds(drawing.dxfversion == "AC1009", f"{path} is release {drawing.dxfversion}")
                holds((len(audit.errors), len(audit.fixes)) == (0, 0), f"{path}: {audit.errors} {audit.fixes}")
                holds(len(drawing.modelspace().query("LINE")) > 0, f"{path} has no line")
        holds(bool(list((bag / "data").glob("book/originals/*"))) == (edition == "firm"), f"{edition}: originals")
        holds((bag / "data/tables/price.csv").exists() <= (edition == "firm"), f"{edition}: price lines")
        return listed["lacks"]


def main():
    eavebook = os.path.abspath(sys.argv[1])
    with tempfile.TemporaryDirectory() as place:
        book, out = f"{place}/book", f"{place}/out"
        run(eavebook, "demo", "--book", book)
        for edition in EDITIONS:
            (path,) = run(eavebook, "packet", "--book", book, "--edition", edition, "--out", out).split("\n")[:1]
            lacks = packet(path, edition, eavebook)
            print(f"{edition}: {os.path.getsize(path)} bytes, lacks {lacks}")
    print(f"pass {looked_at}")


main()
