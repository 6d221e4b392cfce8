"""Lists every public name of the C++ headers and fails where C or Python lacks it; and the other way round, every function,
type and constant of C and every public name of Python, and fails on one that no C++ name explains.

public_names_test.py SOURCE PYTHON_PATH: reads include/latchwork/*.hpp, the C header, and imports the Python package.
The rule is DEVELOPERS.md, "Names in three languages"; what departs from it is listed here, each with its reason.
"""
import importlib
import pathlib
import re
import sys

NOT_IN_C = {
    # C++ name: reason
    "graded_schematic": "latchwork_graded_schematic_svg, drawn at once",
    "Place": "fields row, column, line, field, character of the structs that have a place",
    "Place.row": "as Place",
    "Place.column": "as Place",
    "Place.line": "as Place",
    "Place.field": "as Place",
    "Place.character": "as Place",
    "Error.place": "as Place",
    "Finding.place": "as Place",
    "Fault.place": "as Place",
    "Verification.difference": "as Place",
    "Verification.first_needless": "flat: needless_move, needless_row, needless_column, needless_message",
    "CertificateCheck.place": "as Place",
    "MachineFile": "two structs beside each other, since a struct inside a struct cannot grow",
    "MachineFile.machine": "as MachineFile",
    "MachineFile.effort": "as MachineFile",
    "write(MachineFile)": "latchwork_machine_write",
    "Density": "fields of latchwork_gauge, since a struct inside a struct cannot grow",
    "Density.per_10cm": "as Density",
    "Density.spread": "as Density",
    "Density.places": "as Density",
    "Gauge.texture": "the caller named it",
    "Density.standard_error": "as Density",
    "Density.swatches": "as Density",
    "Density.freedom": "as Density",
    "Gauge.stitches": "stitches_per_10cm, stitches_spread, stitches_standard_error, stitches_places",
    "Gauge.rows": "rows_per_10cm, rows_spread, rows_standard_error, rows_places",
    "Rhythm": "latchwork_plan_rhythm gives both numbers",
    "Rhythm.every": "as Rhythm",
    "Rhythm.first": "as Rhythm",
    "KeptRhythm.rhythm": "every and first, since a struct of an array holds no other that may be absent",
    "TwoRhythms.crossings": "crossings_every and crossings_first, since a struct inside a struct cannot grow",
    "TwoRhythms.reforms": "as TwoRhythms.crossings",
    "TwoRhythms.plan": "the second thing that latchwork_grid_plan_two_rhythms gives",
    "StopReason.place": "as Place",
    "PlanOptions.stop": "what the progress callback returns",
    "WatchOptions.stop": "what the progress callback returns",
    "FitOptions.stop": "what the progress callback returns",
    "YarnEstimate.shares": "latchwork_yarn_need_shares, at its index",
    "YarnEstimate.notes": "latchwork_yarn_need_notes, at its index",
    "TargetPiece.shape": "latchwork_targets_shape, at its index",
    "StripSize.name": "latchwork_panel_strips, at its band and strip",
    "StripSize.texture": "as StripSize.name",
    "PieceFit.fit": "latchwork_article_fit_result, at its index",
    "panel_design": "latchwork_article_fit_fitted, since latchwork_fit_request only points at strips that live somewhere",
    "PieceWork.plan": "latchwork_article_job_plan, at its index",
    "PieceWork.verification": "latchwork_article_job_verification, at its index",
    "PieceWork.inner_plan": "latchwork_article_job_inner_plan, at its index",
    "PieceWork.inner_verification": "latchwork_article_job_inner_verification, at its index",
    "GradeRequest": "the arguments of latchwork_grade",
    "GradeRequest.design": "an argument of latchwork_grade",
    "GradeRequest.sizes": "an argument of latchwork_grade",
    "FitNearest": "the candidates of latchwork_fit_result_nearest, and what latchwork_fit_result_gives gives at their index",
    "FitNearest.candidate": "as FitNearest",
    "FitNearest.gives": "as FitNearest",
    "Size.strips": "latchwork_panel_size_strips, latchwork_job_size_strips",
    "Size.findings": "latchwork_panel_size_findings, latchwork_job_size_findings",
    "Wale.columns": "latchwork_wales_columns",
    "Wale.column_at": "latchwork_wales_columns, at the row",
}
NOT_IN_PYTHON = {
    "Error.place": "attributes row, column, line and field, so that nobody parses",
    "PlanOptions": "keyword arguments",
    "WatchOptions": "keyword arguments",
    "FitOptions": "keyword arguments",
    "ChartOptions": "keyword arguments",
    "PanelParts": "keyword arguments",
    "SizeOptions": "keyword arguments",
    "SessionOptions": "keyword arguments",
    "ShapeOptions": "keyword arguments",
    "Panel.set_axis_half_columns": "assign to Panel.axis_half_columns",
}
# The other way round: what no C++ name explains. A rule is a pattern with its reason, where "{handle}" stands for any type
# whose values are behind a pointer and "{struct}" for any with fields.
RULES_OF_C = {
    "latchwork_{handle}_(create|copy|destroy)": "constructors, copies and destructors",
    "latchwork_{handle}_equal": "operator==",
    "LATCHWORK_{struct}_INIT": "member initialisers",
}
ONLY_IN_C = {
    "LATCHWORK_OK": "C++ throws, so it has no code for success",
    "latchwork_status": "what C returns where C++ throws",
    "latchwork_progress_call": "std::function<void(const Progress&)>",
    "latchwork_effort_default": "Effort{}",
    "latchwork_fit_request_default": "FitRequest{}",
    "LATCHWORK_NO_TOLERANCE": "std::nullopt, of a tolerance",
    "latchwork_fit_result_gives": "FitNearest::gives, as latchwork_panel_strips",
    "latchwork_grading_gives": "FitNearest::gives, as latchwork_panel_strips",
    "latchwork_yarn_request_default": "YarnRequest{}",
    "latchwork_yarn_file": "a YarnRequest whose arrays live somewhere: latchwork_yarn_request only points at them",
    "latchwork_yarn_file_request": "as latchwork_yarn_file",
    "latchwork_article_file": "an Article whose arrays live somewhere: latchwork_article only points at them",
    "latchwork_article_file_article": "as latchwork_article_file",
    "latchwork_article_request_file": "an ArticleRequest whose arrays live somewhere, as latchwork_article_file",
    "latchwork_article_request_file_request": "as latchwork_article_request_file",
    "latchwork_article_fit_result": "PieceFit::fit, as latchwork_panel_strips",
    "latchwork_article_fit_fitted": "fitted() of piece_request() and panel_design()",
    "latchwork_article_job_plan": "PieceWork::plan, as latchwork_panel_strips",
    "latchwork_article_job_verification": "PieceWork::verification, as latchwork_panel_strips",
    "latchwork_article_job_inner_plan": "PieceWork::inner_plan, as latchwork_panel_strips",
    "latchwork_article_job_inner_verification": "PieceWork::inner_verification, as latchwork_panel_strips",
    "latchwork_brief_set_article": "assignment to Brief::article and Brief::own_article",
    "latchwork_brief_clear_article": "Brief::article.reset()",
    "latchwork_targets_shape": "TargetPiece::shape, as latchwork_panel_strips",
    "latchwork_brief_set_sessions": "assignment to Brief::session_ms and Brief::rest_ms",
    "latchwork_brief_set_state": "assignment to Brief::state",
    "latchwork_brief_set_substitutes": "assignment to Brief::substitutes",
    "latchwork_brief_set_yarn": "assignment to Brief::yarn",
    "latchwork_brief_clear_yarn": "Brief::yarn.reset()",
    "latchwork_yarn_need_shares": "YarnEstimate::shares, as latchwork_panel_strips",
    "latchwork_yarn_need_notes": "YarnEstimate::notes, as latchwork_panel_strips",
    "latchwork_panel_from_bands": "the second constructor of Panel",
    "latchwork_machine_write": "write(const MachineFile&), in two structs",
    "latchwork_wales_columns": "Wale::columns",
    "latchwork_findings_count": "std::vector<Finding>::size",
    "latchwork_findings_get": "std::vector<Finding>::operator[]",
    "latchwork_findings_message": "Finding::message, whole",
    "latchwork_findings_suggestion": "Finding::suggestion, whole",
    "latchwork_fabric_fault": "Fabric::faults[index]; latchwork_fabric_faults counts them",
    "latchwork_panel_strips": "Band::strips, since a struct of an array holds no list",
    "latchwork_panel_schematic_measures": "SchematicPiece::measures, as latchwork_panel_strips",
    "latchwork_panel_schematic_notes": "SchematicPiece::notes, as latchwork_panel_strips",
    "latchwork_graded_schematic_svg": "schematic_svg() of graded_schematic()",
    "latchwork_schematic_outline": "an outline of SchematicPiece::others",
    "latchwork_panel_schematic_label": "SchematicMeasure::label, as latchwork_panel_strips",
    "latchwork_panel_size_strips": "Size::strips, as latchwork_panel_strips",
    "latchwork_panel_size_findings": "Size::findings, as latchwork_panel_strips",
    "latchwork_size_options_default": "SizeOptions{}",
    "latchwork_session_options_default": "SessionOptions{}",
    "LATCHWORK_CLOTH_STATE_MOST_FINISHED": "std::nullopt, of a state that is asked for",
    "latchwork_job_size_strips": "Size::strips, as latchwork_panel_strips",
    "latchwork_job_size_findings": "Size::findings, as latchwork_panel_strips",
    "latchwork_plan_releases": "Stop::releases, as latchwork_panel_strips",
    "latchwork_plan_reforms": "Stop::reforms, as latchwork_panel_strips",
    "latchwork_plan_crossings": "Stop::crossings, as latchwork_panel_strips",
    "latchwork_plan_shapings": "Stop::shapings, as latchwork_panel_strips",
    "latchwork_plan_holds": "Stop::holds, as latchwork_panel_strips",
    "latchwork_plan_rungs": "Reform::rungs, as latchwork_panel_strips",
    "latchwork_plan_returns": "CrossingStep::returns, as latchwork_panel_strips",
    "latchwork_plan_prongs": "GroupReturn::prongs, as latchwork_panel_strips",
    "latchwork_certificate_wales": "WaleClass::wales, as latchwork_panel_strips",
    "latchwork_certificate_stretch_branches": "Stretch::branches, as latchwork_panel_strips",
    "latchwork_certificate_prices": "WaleClass::prices, as latchwork_panel_strips",
    "latchwork_effort_fit_tied_with": "TermFit::tied_with, as latchwork_panel_strips",
}
ONLY_IN_PYTHON = {
    "StopSource": "std::stop_source",
    "StopSource.request_stop": "std::stop_source::request_stop",
    "StopSource.stop_requested": "std::stop_source::stop_requested",
    "Error.row": "Place::row",
    "Error.column": "Place::column",
    "Error.line": "Place::line",
    "Error.field": "Place::field",
    "Error.character": "Place::character",
}


def snake(name):
    return re.sub(r"(?<=[a-z0-9])(?=[A-Z])", "_", name).lower()


def without_comments(text):
    text = re.sub(r"//[^\n]*", "", text)
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.S)
    return re.sub(r"^\s*#[^\n]*", "", text, flags=re.M)


def matching(text, start):
    """Index just past the brace that closes the one at `start`."""
    depth = 0
    for i in range(start, len(text)):
        depth += {"{": 1, "}": -1}.get(text[i], 0)
        if depth == 0:
            return i + 1
    raise ValueError("a brace is not closed")


def statements(body):
    """Top-level statements of a body: each up to its ';' or its closing brace."""
    out, start, i, parens = [], 0, 0, 0
    while i < len(body):
        c = body[i]
        if c in "(":
            parens += 1
        elif c == ")":
            parens -= 1
        elif c == "{" and parens == 0:
            i = matching(body, i)
            rest = re.match(r"\s*;", body[i:])
            if rest:
                i += rest.end()
                out.append(body[start:i])
                start = i
            elif re.search(r"\)\s*(const)?\s*(noexcept)?\s*(override)?\s*\{", body[start:i]):
                out.append(body[start:i])
                start = i
            continue
        elif c == ";" and parens == 0:
            out.append(body[start:i])
            start = i + 1
        i += 1
    return [" ".join(s.split()) for s in out if s.strip()]


def members(name, body):
    public = body.split("private:")[0].replace("public:", " ")
    for statement in statements(public):
        statement = re.sub(r"\[\[\w+\]\]", "", statement).strip()
        if statement.startswith(("friend", "using", "enum")) or "operator" in statement or f"~{name}" in statement:
            continue
        head = re.split(r"[{=]", statement)[0] if "(" not in re.split(r"[{=]", statement)[0] else statement
        call = re.match(r"(?:[\w:<>&*,\s]+?[\s&*])?(\w+)\s*\(", statement) if "(" in head else None
        if call:
            if call.group(1) != name:
                yield call.group(1)
            continue
        head = re.sub(r"<[^<>]*(<[^<>]*>)?[^<>]*>", "", head)
        first, *others = head.split(",")
        yield first.split()[-1]
        for other in others:
            yield other.split()[0]
        for more in re.findall(r",\s*(\w+)\s*=", statement):
            yield more


def cpp_names(folder):
    """{'enum': {E: [values]}, 'type': {T: [members]}, 'function': {name: [first argument's type]}}"""
    found = {"enum": {}, "type": {}, "function": {}}
    for path in sorted(folder.glob("*.hpp")):
        text = without_comments(path.read_text(encoding="utf-8"))
        for space in re.finditer(r"namespace latchwork::inline v0 \{", text):
            body = text[space.end() : matching(text, space.end() - 1) - 1]
            for statement in statements(body):
                enum = re.match(r"enum class (\w+)[^{]*\{(.*)\}", statement)
                type_ = re.match(r"(?:class|struct) (?:LATCHWORK_API )?(\w+)[^{;]*\{(.*)\}", statement)
                if enum:
                    values = [v.split("=")[0].strip() for v in enum.group(2).split(",") if v.strip()]
                    found["enum"][enum.group(1)] = values
                elif type_:
                    found["type"][type_.group(1)] = list(dict.fromkeys(members(type_.group(1), type_.group(2))))
                elif "(" in statement and not statement.startswith(("class", "struct")):
                    function = re.match(r"(?:LATCHWORK_API )?[\w:<>\s&*,]+?[\s&*](\w+)\(([^)]*)\)?", statement)
                    first = re.sub(r"\b(const|std::)|[&*]", "", function.group(2).split(",")[0]).split()
                    found["function"].setdefault(function.group(1), []).append(first[0] if first else "")
                elif "constexpr" in statement:
                    found["function"].setdefault(re.search(r"(\w+)\s*=", statement).group(1), []).append("")
    return found


def c_names(header):
    text = without_comments(header.read_text(encoding="utf-8"))
    functions = set(re.findall(r"\b(latchwork_\w+)\s*\(", text))
    constants = set(re.findall(r"\b(LATCHWORK_\w+)", header.read_text(encoding="utf-8")))
    types = set(re.findall(r"\btypedef[^;{]*?\b(latchwork_\w+)\s*;", text))
    fields = {}
    for struct in re.finditer(r"typedef struct (latchwork_\w+)\s*\{", text):
        types.add(struct.group(1))
        body = text[struct.end() - 1 : matching(text, struct.end() - 1)]
        fields[struct.group(1)] = set(re.findall(r"\b(\w+)\s*(?:\[[^\]]*\])?\s*[;,]", body))
    for function in re.findall(r"\(\*\s*(latchwork_\w+)\s*\)", text):
        types.add(function)
    return functions, constants, types, fields


def names_for_c(names):
    """What the rule makes of every C++ name."""
    for enum, values in names["enum"].items():
        prefix = "LATCHWORK_E_" if enum == "ErrorCode" else f"LATCHWORK_{snake(enum).upper()}_"
        yield from (prefix + v.upper() for v in values)
    for type_, of in names["type"].items():
        own = f"latchwork_{snake(type_)}"
        yield own
        yield from (f"{own}_{m}" for m in of)
        yield from (f"{own}_{m}".upper() for m in of)
    for function, firsts in names["function"].items():
        yield from (f"latchwork_{function}", f"LATCHWORK_{function.upper()}")
        yield from (f"latchwork_{snake(first)}_{function}" for first in firsts)


def unexplained_in_c(names, header):
    functions, _, types, fields = c_names(header)
    text = without_comments(header.read_text(encoding="utf-8"))
    constants = set(re.findall(r"\b(LATCHWORK_\w+)\s*=", text))  # enumerators; macros are directives:
    constants |= set(re.findall(r"^#define (LATCHWORK_(?!C_API|LATCHWORK_H)\w+)", header.read_text(encoding="utf-8"), re.M))
    kinds = {"handle": [t for t in types if f"{t}_destroy" in functions], "struct": list(fields)}
    rules = []
    for rule in RULES_OF_C:
        for kind, of in kinds.items():
            short = (t.removeprefix("latchwork_") for t in of)
            either = "|".join(name.upper() if rule.startswith("LATCHWORK") else name for name in short)
            rule = rule.replace(f"{{{kind}}}", f"(?:{either})")
        rules.append(re.compile(rule))
    explained = set(names_for_c(names))
    for name in sorted(functions | types | constants):
        if name not in explained and not any(rule.fullmatch(name) for rule in rules):
            yield name


def unexplained_in_python(names, module):
    known = {**names["enum"], **names["type"], **names["function"]}
    for name in sorted(n for n in {*module.__all__, *vars(module)} if not n.startswith("_")):
        what = getattr(module, name)
        if name not in known:
            yield name
        if isinstance(what, type):
            of = names["enum"].get(name) or names["type"].get(name, ())
            yield from (f"{name}.{m}" for m in vars(what) if not m.startswith("_") and m not in of)


def gaps_in_c(names, header):
    functions, constants, types, fields = c_names(header)
    for enum, values in names["enum"].items():
        prefix = "LATCHWORK_E_" if enum == "ErrorCode" else f"LATCHWORK_{snake(enum).upper()}_"
        yield from (f"{enum}.{v}" for v in values if prefix + v.upper() not in constants)
    for type_, of in names["type"].items():
        own = f"latchwork_{snake(type_)}"
        if own not in types:
            yield type_
        for m in of:
            if not {f"{own}_{m}", f"{own}_{m}".upper()} & (functions | constants) and m not in fields.get(own, ()):
                yield f"{type_}.{m}"
    for function, firsts in names["function"].items():
        for first in firsts:
            wanted = {f"latchwork_{function}", f"latchwork_{snake(first)}_{function}", f"LATCHWORK_{function.upper()}"}
            if not wanted & (functions | constants):
                yield function if len(firsts) == 1 else f"{function}({first})"


def gaps_in_python(names, module):
    for enum, values in names["enum"].items():
        if not hasattr(module, enum):
            yield enum
            continue
        yield from (f"{enum}.{v}" for v in values if not hasattr(getattr(module, enum), v))
    for type_, of in names["type"].items():
        if not hasattr(module, type_):
            yield type_
            continue
        yield from (f"{type_}.{m}" for m in of if not hasattr(getattr(module, type_), m))
    yield from (function for function in names["function"] if not hasattr(module, function))


def misnamed(source):
    """Headers whose namespace is not the major version's, whose macros could be anybody's, that latchwork.hpp leaves out, or
    with a class that does not say which of its calls may run at once."""
    major = re.search(r"project\(latchwork VERSION (\d+)\.", (source / "CMakeLists.txt").read_text(encoding="utf-8")).group(1)
    folder = source / "include/latchwork"
    everything = (folder / "latchwork.hpp").read_text(encoding="utf-8")
    for path in sorted(folder.glob("*.hpp")):
        text = path.read_text(encoding="utf-8")
        spaces = set(re.findall(r"^namespace ([\w:]+(?: \w+)*)", text, re.M))
        wanted = set() if path.name in ("latchwork.hpp", "export.hpp") else {f"latchwork::inline v{major}"}
        if spaces != wanted:
            yield f"{path.name} opens {sorted(spaces)}, and not {sorted(wanted)}"
        macros = re.findall(r"^[ \t]*#[ \t]*define[ \t]+(?!LATCHWORK_)(\w+)", text, re.M)
        if macros:
            yield f"{path.name} defines {macros}, which do not begin with LATCHWORK_"
        if path.name not in ("latchwork.hpp", "export.hpp") and f'#include "latchwork/{path.name}"\n' not in everything:
            yield f"latchwork.hpp leaves {path.name} out"
        for comment, name in re.findall(r"((?:^///.*\n)*)^class LATCHWORK_API (\w+)", text, re.M):
            if "onst calls may run at once on one object; any other call needs it alone." not in comment.replace("\n/// ", " "):
                yield f"{name} does not say which of its calls may run at once"


def main():
    source = pathlib.Path(sys.argv[1])
    sys.path.insert(0, sys.argv[2])
    module = importlib.import_module("latchwork")
    names = cpp_names(source / "include/latchwork")
    count = sum(1 + len(v) for kind in ("enum", "type") for v in names[kind].values()) + len(names["function"])
    if count < 200:
        sys.exit(f"only {count} public names were found: the reader of headers has lost its way")
    failed = False
    for wrong in misnamed(source):
        print(wrong)
        failed = True
    header = source / "bindings/c/include/latchwork/latchwork.h"
    for language, gaps, excused in (
        ("C", list(gaps_in_c(names, header)), NOT_IN_C),
        ("Python", list(gaps_in_python(names, module)), NOT_IN_PYTHON),
    ):
        missing = [name for name in gaps if name not in excused]
        stale = [name for name in excused if name not in gaps]
        for name in missing:
            print(f"{language} lacks {name}")
        for name in stale:
            print(f"{language} has {name}, which is listed as left out")
        failed = failed or bool(missing or stale)
        print(f"{language}: {count - len(gaps)} of {count} public C++ names, {len(excused)} left out with a reason")
    for language, extra, excused in (
        ("C", list(unexplained_in_c(names, header)), ONLY_IN_C),
        ("Python", list(unexplained_in_python(names, module)), ONLY_IN_PYTHON),
    ):
        for name in sorted(set(extra) ^ set(excused)):
            print(f"{language}: {name} " + ("has no C++ name" if name in extra else "is listed without need"))
        failed = failed or set(extra) != set(excused)
        print(f"{language}: {len(excused)} names of its own, each with a reason")
    sys.exit(failed)


if __name__ == "__main__":
    main()
