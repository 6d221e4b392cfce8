"""Charts and page of a brief, read by general tools: markup_test.py MAKE_PANEL BRIEF_FOLDER OUTPUT_FOLDER

Well-formed as XML, balanced as HTML with nothing where it may not stand, ids unique, links and uses have targets,
nothing is fetched, text stays inside the picture, the key holds the symbols drawn and no others, the picture renders,
and the page prints on A4.
"""
import html.parser
import json
import pathlib
import re
import shutil
import struct
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

import weasyprint
from weasyprint.formatting_structure import boxes

SVG = "{http://www.w3.org/2000/svg}"
XHTML = "{http://www.w3.org/1999/xhtml}"
VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}


class Balance(html.parser.HTMLParser):
    """Every element that opens closes, in order."""

    def __init__(self):
        super().__init__()
        self.open = []
        self.ids = []
        self.links = []

    def handle_starttag(self, tag, attrs):
        if tag not in VOID:
            self.open.append(tag)
        self.note(attrs)

    def handle_startendtag(self, tag, attrs):
        self.note(attrs)

    def handle_endtag(self, tag):
        assert self.open and self.open[-1] == tag, f"</{tag}> closes {self.open[-3:]}"
        self.open.pop()

    def note(self, attrs):
        for name, value in attrs:
            if name == "id":
                self.ids.append(value)
            if name in ("href", "xlink:href"):
                self.links.append(value)
            assert not name.startswith("on"), f"a script in {name}"


def group(root, name):
    return [path for g in root.iter(SVG + "g") if g.get("class") == "lw-" + name for path in g.iter(SVG + "path")]


def key_words(root):
    return [t.text for g in root.iter(SVG + "g") if g.get("class") == "lw-key" for t in g.iter(SVG + "text")]


def check_chart(root, side, plan):
    _, _, width, height = map(float, root.get("viewBox").split())
    assert width > 0 and height > 0
    assert root.find(SVG + "title").text.startswith(side), root.find(SVG + "title").text
    assert root.find(SVG + "desc").text
    shown = " ".join(t.text for g in root.iter(SVG + "g") if g.get("class") == "lw-title" for t in g)
    assert shown == root.find(SVG + "title").text, "the title that is seen is the title that is told"
    assert not list(root.iter(SVG + "script"))
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    for use in root.iter(SVG + "use"):
        target = use.get("{http://www.w3.org/1999/xlink}href") or use.get("href")
        assert target[1:] in ids, target
    # Half the font size a letter is less than any common sans-serif face takes on average.
    for g in root.iter(SVG + "g"):
        if g.get("font-size") is None:
            continue
        size = float(g.get("font-size"))
        anchor = g.get("text-anchor", "start")
        for text in g.iter(SVG + "text"):
            span = 0.5 * size * len(text.text)
            start = float(text.get("x")) - {"start": 0, "middle": span / 2, "end": span}[anchor]
            assert start >= 0 and start + span <= width, (text.text, start, span, width)
            assert 0 <= float(text.get("y")) <= height, text.text
    for path in root.iter(SVG + "path"):
        for x, y in re.findall(r"M(-?[\d.]+) (-?[\d.]+)", path.get("d")):
            assert 0 <= float(x) <= width and 0 <= float(y) <= height, (x, y)
    words = " | ".join(key_words(root))
    turned = side.startswith("Operator")
    notes = " ".join(t.text for g in root.iter(SVG + "g") if g.get("class") == "lw-notes" for t in g)
    blank_purls = "A cell without a mark is a back loop" in notes
    assert blank_purls != ("A cell without a mark is a face loop" in notes), notes
    marked, bare, loop = ("knit", "purl", "a face loop") if blank_purls else ("purl", "knit", "a back loop")
    assert not group(root, bare), bare
    kinds = {marked: loop, "tuck": "tuck:", "slip": "slip:", "none": "no stitch", "crossing": " cross",
             "stop": "stop after this row", "centre": "centre line"}
    for name, phrase in kinds.items():
        assert bool(group(root, name)) == (phrase in words), (name, words, turned)
    stops = {stop["row"] for stop in plan["stops"]}
    marks = "".join(path.get("d") or "" for path in group(root, "stop-mark"))
    assert marks.count("M") == len(stops), (marks.count("M"), len(stops))
    # A line across where the work is other than at every stop below.
    kinds_of_work = {json.dumps({name: stop[name] for name in stop if name not in ("row", "carriage_right", "effort_ms")})
                     for stop in plan["stops"]}
    lines = "".join(path.get("d") for path in group(root, "stop")).count("M")
    assert 0 < lines <= len(kinds_of_work) if stops else lines == 0, (lines, len(kinds_of_work))
    return group(root, "crossing")


# What may stand in what, of the elements the page uses (HTML, sections 4.1 to 4.9); others may not stand there at all.
CONTENT = {"html": "head body", "head": "meta title style", "body": "h1 p nav section", "nav": "a",
           "section": "h2 h3 p ul table figure", "ul": "li", "li": "a span", "table": "thead tbody", "thead": "tr",
           "tbody": "tr", "tr": "th td", "td": "br span", "span": "span", "p": "a strong"}
WORDS = {"a", "h1", "h2", "h3", "li", "p", "span", "strong", "style", "td", "th", "title"}
ATTRIBUTES = {"a": {"href"}, "figure": {"style"}, "html": {"lang"}, "meta": {"charset", "name", "content"},
              "td": {"colspan", "data-label"}, "th": {"scope"}}


def check_content(element):
    name = element.tag.removeprefix(XHTML)
    children = [child.tag.removeprefix(XHTML) for child in element]
    allowed = CONTENT.get(name, "").split()
    if name == "figure" and "cut" in element.get("class"):
        assert [child.get("class") for child in element] == ["rows", "cells"], "what stays, what scrolls"
        assert children == ["div", "div"], children
    elif name in ("figure", "div"):
        assert [child.tag for child in element] == [SVG + "svg"], children
    elif name == "span" and element.get("class") == "symbol":
        assert children == [SVG + "svg"], children
    elif name == "span" and element.get("class") == "entry":  # a symbol and its words
        assert [child.get("class") for child in element] == ["symbol", "says"], children
    else:
        assert set(children) <= set(allowed), (name, children)
    assert set(element.attrib) <= ATTRIBUTES.get(name, set()) | {"class", "id"}, (name, element.attrib)
    if name not in WORDS:
        loose = (element.text or "") + "".join(child.tail or "" for child in element)
        assert not loose.strip(), (name, loose.strip()[:40])
    if name in ("ul", "table", "thead", "tbody", "tr"):
        assert children, f"an empty {name}"
    if name == "table":
        widths = {sum(int(cell.get("colspan", 1)) for cell in row) for row in element.iter(XHTML + "tr")}
        assert len(widths) == 1, widths
    for child in element:
        if child.tag.startswith(XHTML):
            check_content(child)


def check_in_sight(figure):
    """Of a chart that scrolls the row numbers and stops stand, at their heights, in the picture that stays too."""
    pictures = {div.get("class"): div[0] for div in figure.iter(XHTML + "div")}
    if not pictures:
        return
    told = {kind: {(name, text.get("y"), text.text) for name in ("rows", "stop-mark")
                   for g in svg.iter(SVG + "g") if g.get("class") == "lw-" + name for text in g.iter(SVG + "text")}
            for kind, svg in pictures.items()}
    assert told["rows"] == told["cells"] and told["rows"]
    assert not [t for g in pictures["cells"].iter(SVG + "g") if g.get("class") in ("lw-title", "lw-notes", "lw-key")
                for t in g], "words in what scrolls"
    assert pictures["rows"].get("aria-hidden") == "true"


def check_page(text, folder):
    root = ElementTree.fromstring(text.split("\n", 1)[1])  # after the doctype
    assert root.tag == XHTML + "html" and root.get("lang") == "en"
    assert text.startswith("<!DOCTYPE html>\n")
    check_content(root)
    figures = list(root.iter(XHTML + "figure"))
    assert len(figures) >= 3 and len(figures) % 2 == 1, len(figures)  # the schematic, and as many sheets a side
    for figure in figures:
        check_in_sight(figure)
    for key in (ul for ul in root.iter(XHTML + "ul") if ul.get("class") == "key"):
        assert all("".join(li.itertext()).strip() for li in key), "a symbol without words"
    pictures = [svg for svg in root.iter(SVG + "svg") if svg.get("style")]  # those of print
    assert any(m.get("name") == "viewport" for m in root.iter(XHTML + "meta"))
    balance = Balance()
    balance.feed(text)
    balance.close()
    assert not balance.open, balance.open
    assert len(balance.ids) == len(set(balance.ids)), "an id twice"
    for link in balance.links:
        assert link[1:] in balance.ids if link.startswith("#") else (folder / link).is_file(), link
    assert not re.search(r"https?://(?!www\.w3\.org/)", text), "the page fetches something"
    assert "@media print" in text and "size: A4" in text
    return " ".join("".join(root.itertext()).split()), len(pictures)


def rendered(svg):
    """Width and height in pixels as a general renderer sees it."""
    program = shutil.which("rsvg-convert")
    assert program is not None, "rsvg-convert (package librsvg2-bin) is not there: the charts cannot be rendered"
    png = subprocess.run([program, "-w", "700", str(svg)], check=True, capture_output=True).stdout
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    return struct.unpack(">II", png[16:24])


def printed(page, expected):
    """Prints the page, as a general renderer lays it out: A4 sheets, all words and pictures inside the margins, each of
    the expected pictures whole on one sheet, no line or heading alone."""
    sheets = weasyprint.HTML(filename=str(page)).render().pages
    pictures = 0
    for number, sheet in enumerate(sheets, start=1):
        sides = sorted((sheet.width, sheet.height))  # CSS pixels; a sheet of a wide chart is laid across
        assert abs(sides[0] - 210 / 25.4 * 96) < 1 and abs(sides[1] - 297 / 25.4 * 96) < 1, "A4"
        paper = sheet._page_box
        left, right = paper.content_box_x(), paper.content_box_x() + paper.width
        top, bottom = paper.content_box_y(), paper.content_box_y() + paper.height
        for box in paper.descendants():
            words = getattr(box, "text", None)
            picture = isinstance(box, (boxes.BlockReplacedBox, boxes.InlineReplacedBox))
            if words is None and not picture:
                continue
            pictures += picture
            told = (number, words or "chart", box.position_x, box.width, box.position_y, box.height)
            assert left - 1 <= box.position_x and box.position_x + box.width <= right + 1, told
            assert top - 1 <= box.position_y and box.position_y + box.height <= bottom + 1, told
        lines = [box for box in paper.descendants() if isinstance(box, boxes.LineBox)]
        has_picture = any(isinstance(box, boxes.BlockReplacedBox) for box in paper.descendants())
        assert len(lines) > 2 or has_picture, (number, "a page for a line or two")
        lowest = max(lines, key=lambda box: box.position_y)
        heading = re.match("h[123]", lowest.element_tag)
        assert not heading or has_picture, (number, "a heading with nothing below it")
        for cell in (box for box in paper.descendants() if isinstance(box, boxes.TableCellBox)):
            edge = cell.border_box_x() + cell.border_width()
            for box in (box for box in cell.descendants() if getattr(box, "text", None)):
                assert box.position_x + box.width <= edge, (number, box.text, "over the edge of its cell")
                assert not re.search(r"(\b[LR]\d+-|\brows as)$", box.text.rstrip()), (number, box.text, "torn")
            if "".join(getattr(box, "text", "") for box in cell.descendants()) == "Stop":
                assert cell.border_width() < paper.width / 8, (number, cell.border_width(), "wide for a number")
    assert pictures == expected, (pictures, expected)
    return len(sheets)


def main():
    program, brief, out = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
    done = subprocess.run([program, brief, str(out)], check=True, capture_output=True, text=True, encoding="utf-8")
    assert done.stdout == (out / "summary.txt").read_text("utf-8")
    plan = json.loads((out / "plan.json").read_text("utf-8"))
    right = ElementTree.parse(out / "chart-rs.svg").getroot()
    wrong = ElementTree.parse(out / "chart-operator.svg").getroot()
    assert len(check_chart(right, "Right side (RS)", plan)) > 0
    assert len(check_chart(wrong, "Operator's view: wrong side (WS)", plan)) > 0
    for name in ("chart-rs.svg", "chart-operator.svg", "schematic.svg"):
        size = rendered(out / name)
        print(name, "rendered", size)
        assert size[0] == 700 and size[1] > 200
    page, pictures = check_page((out / "page.html").read_text("utf-8"), out)
    print("page.html printed on", printed(out / "page.html", pictures), "sheets")
    told = (out / "instructions.txt").read_text("utf-8")
    for line in told.splitlines():
        stop = re.match(r" *\d+  (RC \d+ CO[LR])  (.*)\.$", line)
        if stop:
            assert stop.group(1) in page, stop.group(1)
            for action in stop.group(2).split("; "):
                assert action in page, action
    for usage in ([program], [program, brief]):
        assert subprocess.run(usage, capture_output=True).returncode == 2
    with open("/dev/full", "w") as full:
        assert subprocess.run([program, brief, str(out)], stdout=full, stderr=subprocess.PIPE).returncode == 1
    too_wide = out / "too-wide"
    shutil.copytree(brief, too_wide, ignore=shutil.ignore_patterns("expected"), dirs_exist_ok=True)
    machine = json.loads((too_wide / "machine.json").read_text("utf-8"))
    (too_wide / "machine.json").write_text(json.dumps({**machine, "needles": 8}), "utf-8")
    done = subprocess.run([program, str(too_wide), str(too_wide / "out")], capture_output=True, text=True)
    assert done.returncode == 3 and "cannot be made" in done.stdout, (done.returncode, done.stderr)
    unmeasured = out / "unmeasured"
    shutil.copytree(brief, unmeasured, ignore=shutil.ignore_patterns("expected"), dirs_exist_ok=True)
    swatch = (unmeasured / "swatch.csv").read_text("utf-8").splitlines(keepends=True)
    (unmeasured / "swatch.csv").write_text("".join(line for line in swatch if "stockinette" not in line), "utf-8")
    done = subprocess.run([program, str(unmeasured), str(unmeasured / "out")], capture_output=True, text=True)
    assert done.returncode == 4 and "no gauge of 'stockinette'" in done.stdout, (done.returncode, done.stderr)
    assert (unmeasured / "out" / "instructions.txt").read_text("utf-8") == told
    (unmeasured / "swatch.csv").unlink()
    done = subprocess.run([program, str(unmeasured), str(unmeasured / "out")], capture_output=True, text=True)
    assert done.returncode == 4 and "no gauge of 'stockinette'" in done.stdout, (done.returncode, done.stderr)
    # Names that are longer than any line, of a panel and of all its strips, stay inside the paper and their cells.
    named = out / "long-names"
    shutil.copytree(pathlib.Path(brief).parent / "sampler", named, dirs_exist_ok=True)
    panel = json.loads((named / "panel.json").read_text("utf-8"))
    panel["name"] = "A panel " + "whosenamehasnoend" * 8
    for part in panel["parts"]:
        for key in ("strips", "left"):
            for number, strip in enumerate(part.get(key, [])):
                strip["name"] = f"strip {number} " + "alsowithoutend" * 9
    (named / "panel.json").write_text(json.dumps(panel), "utf-8")
    subprocess.run([program, str(named), str(named / "out")], check=True, capture_output=True)
    page, pictures = check_page((named / "out" / "page.html").read_text("utf-8"), named / "out")
    assert "strip 1 alsowithoutend" in page
    printed(named / "out" / "page.html", pictures)
    lost = subprocess.run([program, brief + "/nowhere", str(out)], capture_output=True, text=True)
    assert lost.returncode == 1 and "panel.json" in lost.stderr and not lost.stdout


main()
