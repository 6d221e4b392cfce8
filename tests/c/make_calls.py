"""Writes calls.c: for every function of latchwork.h one call with good arguments, of which any can be made NULL.

make_calls.py HEADER OUT. A function or argument that this script knows no good value for stops it, so that nothing new
in the header goes untested. The contract that the calls are held to is in contract_test.c.
"""
import pathlib
import re
import sys

# Good values: by "function.argument", then by argument. The names w.* are the fields of struct world.
VALUES = {
    "latchwork_grid_from_cells.rows": "2",
    "latchwork_grid_from_cells.columns": "3",
    "latchwork_grid_paste.row": "4",
    "latchwork_grid_paste.column": "0",
    "latchwork_grid_sliced.row": "1",
    "latchwork_grid_sliced.column": "0",
    "latchwork_grid_set.column": "0",
    "latchwork_grid_cross.crossing": "&w.free_crossing",
    "latchwork_grid_above.below": "w.other_grid",
    "latchwork_grid_beside.right": "w.other_grid",
    "latchwork_grid_paste.patch": "w.patch",
    "latchwork_piece_outline.panel": "w.wide_panel",
    "latchwork_fitted_piece.piece": "&w.uncut_piece",
    "latchwork_panel_above.below": "w.other_panel",
    "latchwork_panel_set_axis_half_columns.half_columns": "6",
    "latchwork_needle_of.column": "3",
    "latchwork_rope.interval": "6",
    "latchwork_swatch_has.state": "LATCHWORK_CLOTH_STATE_MOST_FINISHED",
    "latchwork_swatch_gauge.state": "LATCHWORK_CLOTH_STATE_RESTED",
    "latchwork_area_density_g_m2.rows": "&w.row_density",
    "latchwork_fit_result_nearest.fit_result": "w.other_fit_result",
    "latchwork_grading_nearest.grading": "w.other_grading",
    "latchwork_grading_gives.grading": "w.other_grading",
    "latchwork_grading_message.grading": "w.other_grading",
    "latchwork_fit_result_gives.fit_result": "w.other_fit_result",
    "panel_index": "0",
    "latchwork_article_job_inner_plan.article_job": "w.sewn_job",
    "latchwork_article_job_inner_verification.article_job": "w.sewn_job",
    "latchwork_article_fit_fitted.candidate": "&w.article_candidate",
    "panel": "0",
    "length": "108", "events": "11", "ends": "LATCHWORK_SPACING_ENDS_FLAT", "step": "2",
    "total_ms": "81500", "rows": "4", "columns": "6", "row": "2", "column": "1", "cell": "LATCHWORK_CELL_PURL",
    "axis": "LATCHWORK_AXIS_STITCH", "times": "2", "shift": "1", "knit_rows": "2", "purl_rows": "2",
    "block_columns": "2", "block_rows": "2", "height": "1", "front": "2", "back": "2", "interval": "4", "pieces": "2",
    "lean": "LATCHWORK_LEAN_LEFT", "stitches": "2", "machine_class": "LATCHWORK_MACHINE_CLASS_BULKY", "needle": "-3",
    "steps": "5", "index": "0", "band": "0", "stop": "0", "reform": "0", "crossing": "0", "group_return": "0",
    "title": '"family"', "name": '"sample"', "texture": '"rope"', "field": '"width"',
    "system": "LATCHWORK_YARN_SYSTEM_COTTON", "state": "LATCHWORK_PLAIN_STATE_WET_RELAXED",
    "counted": "LATCHWORK_COUNTED_ROWS", "loop_mm": "5.0", "fibre_density": "1.54",
    "unit": "LATCHWORK_LENGTH_UNIT_INCH", "value": "2.5",
    "latchwork_spacing_edge_events.stitches": "1", "above": "0", "seam_stitches": "1",
    "latchwork_built_in_article.name": '"scarf"',
    # What the brief has already: calls after this one find it as it was.
    "latchwork_brief_set_state.state": "LATCHWORK_CLOTH_STATE_MOST_FINISHED",
    "latchwork_brief_set_sessions.session_ms": "3600000", "latchwork_brief_set_sessions.rest_ms": "1200000",
    "latchwork_read_brief.folder": "w.brief_folder", "latchwork_brief_write_job.folder": "w.out_folder",
    "latchwork_brief_write_brief.folder": "w.out_folder",
}
STRUCTS_IN = {
    "latchwork_crossing": "&w.crossing", "latchwork_machine": "&w.machine", "latchwork_effort": "&w.effort",
    "latchwork_plan_options": "&w.plan_options", "latchwork_watch_options": "&w.watch_options",
    "latchwork_chart_options": "&w.chart_options", "latchwork_panel_parts": "&w.parts",
    "latchwork_size_options": "&w.size_options", "latchwork_session_options": "&w.session_options", "latchwork_fit_request": "&w.request", "latchwork_fit_options": "&w.fit_options", "latchwork_target_piece": "&w.target_piece",
    "latchwork_article_request": "&w.article_request", "latchwork_fit_candidate": "&w.candidate", "latchwork_bed": "&w.bed",
    "latchwork_move": "&w.move", "latchwork_length": "&w.length", "latchwork_weight": "&w.weight",
    "latchwork_duration": "&w.duration", "latchwork_count_per_length": "&w.density",
    "latchwork_yarn_number": "&w.yarn",
    "latchwork_spacing": "&w.spacing", "latchwork_split_part": "&w.split_part", "latchwork_edge_shape": "&w.edge_shape", "latchwork_outline": "&w.outline", "latchwork_schematic": "&w.schematic",
    "latchwork_shape_options": "&w.shape_options",
    "latchwork_plain_constants": "&w.constants", "latchwork_yarn_request": "&w.yarn_request",
    "latchwork_article": "&w.article", "latchwork_article_choices": "&w.choices",
}
ARRAYS_IN = {  # (array, count)
    "uint8_t": ("w.cells", "6"), "latchwork_band": ("&w.band", "1"), "latchwork_strip_span": ("&w.span", "1"),
    "latchwork_target_point": ("w.target_points", "1"), "latchwork_measurement": ("w.measurements", "6"), "latchwork_spell": ("w.spells", "9"),
    "latchwork_move": ("w.moves", "w.moves_count"),
    "latchwork_strip*const": ("w.strips", "2"), "latchwork_substitute": ("&w.substitute", "1"), "latchwork_grade_size": ("w.sizes", "2"), "int64_t": ("w.numbers", "3"), "latchwork_yarn_number": ("&w.yarn", "1"),
}
TEXTS_IN = {
    "latchwork_grid_from_text": "w.grid_text", "latchwork_read_grid": "w.grid_json",
    "latchwork_read_strip": "w.strip_json", "latchwork_read_panel": "w.panel_json",
    "latchwork_read_machine": "w.machine_json", "latchwork_read_plan": "w.plan_json",
    "latchwork_read_certificate": "w.certificate_json", "latchwork_read_yarn_request": "w.yarn_json",
    "latchwork_read_article": "w.article_json", "latchwork_read_article_request": "w.choices_json",
    "latchwork_read_swatch": "w.swatch_csv", "latchwork_read_timings": "w.timings_csv",
    "latchwork_read_length": '"17 3/4 in"', "latchwork_read_weight": '"1 lb 4 oz"',
    "latchwork_read_duration": '"1 h 20 min"', "latchwork_read_count_per_length": '"28 sts / 10 cm"',
    "latchwork_read_yarn_number": '"Nm 28/2"',
}
# A plan that has all there can be in a plan, for the calls that read its parts.
FULL_PLAN = {"releases", "holds", "reforms", "rungs", "crossings", "returns", "prongs", "shapings", "stops",
             "columns_on", "stop_kinds", "sessions", "rests"}
INFEASIBLE_PLAN = {"findings"}
# Arguments that may be NULL; `effort` where it is handed in, and in latchwork_read_machine, where it is filled.
NULL_IS_FINE = {"options", "title", "defaults", "field", "own"}
# Without options there is nothing to give, without a title less to write.
NULL_CHANGES = {"latchwork_grid_condition_prices", "latchwork_plan_rests", "latchwork_graded_schematic_svg"}
# What returns no status, and is held to its contract by hand in contract_test.c.
BY_HAND = {"latchwork_error_name", "latchwork_version", "latchwork_cell_letter", "latchwork_cell_of",
           "latchwork_finding_name", "latchwork_cloth_state_name", "latchwork_plan_status_name", "latchwork_effort_term_name",
           "latchwork_term_state_name", "latchwork_stop_cause_name"}


def without_comments(text):
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.S)
    return re.sub(r"^\s*#.*?(?<!\\)$", "", text, flags=re.M | re.S)


def functions(text):
    for match in re.finditer(r"LATCHWORK_C_API\b([^;(]*?)\b(latchwork_\w+)\s*\(([^;]*)\)\s*;", text):
        arguments = []
        for argument in match.group(3).split(","):
            argument = " ".join(argument.split())
            if argument == "void":
                continue
            name = re.search(r"(\w+)$", argument).group(1)
            type_ = argument[: -len(name)].replace(" *", "*").replace("* ", "*").strip()
            arguments.append((type_, name))
        yield " ".join(match.group(1).split()), match.group(2), arguments


def value(function, name):
    found = VALUES.get(f"{function}.{name}", VALUES.get(name))
    if found is None:
        sys.exit(f"make_calls.py knows no good value for {name} of {function}")
    return found


def call_of(function, arguments, handles, structs, elements):
    before, after, given, asked, nullable = [], [], [], [], []
    i = 0

    def add(expression, name, asking=None):
        """One pointer argument: NULL when the caller of the call says so."""
        k = len(given)
        nullable.append((k, name))
        given.append(f"how->null_at == {k} ? NULL : {expression}")
        asked.append(expression if asking is None else asking)

    def plain(expression):
        given.append(expression)
        asked.append(expression)

    while i < len(arguments):
        type_, name = arguments[i]
        following = arguments[i + 1] if i + 1 < len(arguments) else ("", "")
        k = len(given)
        if name == "error":
            given.append("error")
            asked.append("NULL")
        elif following[1] == "capacity":
            element = type_[:-1]
            before.append(f"{element} *list{k} = NULL;\n  size_t needed{k} = 0, asked{k} = 0;")
            add(f"list{k}", name, "NULL")
            given += [f"how->small ? asked{k} - 1 : asked{k}", f"how->no_needed ? NULL : &needed{k}"]
            asked += ["0", f"&asked{k}"]
            size = f"sizeof({element})"
            before.append(f"@ASK{k}:{size}")
            other = "".join(f"how->null_at != {n} && " for n, of in nullable if of in ("options", "title") and function in NULL_CHANGES)
            after.append(f"if ({other}(status == LATCHWORK_OK || how->small)) CHECK(needed{k} == (how->no_needed ? 0 : asked{k}));")
            if element == "char":
                after.append(f"if ({other}status == LATCHWORK_OK) CHECK(strlen(list{k}) == asked{k} - 1);")
                after.append(f"if (status != LATCHWORK_OK && how->null_at != {k} && !how->small) CHECK(list{k}[0] == 0);")
            after.append(f"free((void *)list{k});")
            i += 2
        elif type_ == "const char*" and following == ("size_t", "size"):
            text = TEXTS_IN[function] if function in TEXTS_IN else sys.exit(f"no text for {function}")
            add(text, name)
            plain(f"strlen({text})")
            i += 1
        elif re.fullmatch(r"size_t", following[0]) and re.search(r"count$", following[1]):
            element = type_[len("const "):-1]
            if element not in ARRAYS_IN:
                sys.exit(f"make_calls.py knows no array of {element} for {function}")
            add(ARRAYS_IN[element][0], name)
            plain(ARRAYS_IN[element][1])
            i += 1
        elif type_ == "const char*":
            add(value(function, name), name)
        elif type_.endswith("**"):
            handle = type_[:-2]
            before.append(f"{handle} *out = ({handle} *)poison;")
            add("&out", name)
            after.append(f"if (status != LATCHWORK_OK && how->null_at != {k}) CHECK(out == NULL);")
            after.append(f"if (status == LATCHWORK_OK) {handle}_destroy(out);")
        elif type_.endswith("*") and type_.replace("const ", "")[:-1] in handles:
            handle = type_.replace("const ", "")[:-1]
            short = handle[len("latchwork_"):]
            field = f"w.{'other_' if name == 'other' else ''}{short}"
            field = VALUES.get(f"{function}.{name}", field)
            if handle == "latchwork_plan":
                part = function.replace("latchwork_plan_", "")
                field = "w.full_plan" if part in FULL_PLAN else "w.infeasible_plan" if part in INFEASIBLE_PLAN else field
            if type_.startswith("const "):
                add(field, name)
            else:
                before.append(f"{handle} *changed = NULL;")
                before.append(f"if ({handle}_copy({field}, &changed, NULL) != LATCHWORK_OK) return -1;")
                add("changed", name)
                after.append(f"if (status != LATCHWORK_OK) CHECK(same_{short}(changed, {field}));")
                after.append(f"{handle}_destroy(changed);")
        elif type_.startswith("const latchwork_") and type_[len("const "):-1] in STRUCTS_IN:
            good = STRUCTS_IN[type_[len("const "):-1]]
            add(VALUES.get(f"{function}.{name}", good), name)
        elif type_.endswith("*") and type_[:-1] in structs:
            before.append(f"{type_[:-1]} filled{k} = {type_[:-1].upper()}_INIT;")
            add(f"&filled{k}", name)
        elif type_.endswith("*") and type_[:-1] in elements:
            # Compared byte by byte, padding too, so that nothing of it is written when the call fails.
            before.append(f"{type_[:-1]} filled{k} = {{0}};")
            before.append(f"@CLEAR memset(&filled{k}, 7, sizeof filled{k});")
            add(f"&filled{k}", name)
            after.append(f"if (status != LATCHWORK_OK) CHECK(all_sevens(&filled{k}, sizeof filled{k}));")
        elif type_ in ("int32_t*", "int64_t*", "uint64_t*", "size_t*", "double*"):
            before.append(f"{type_[:-1]} number{k} = 77;")
            add(f"&number{k}", name)
            after.append(f"if (status != LATCHWORK_OK) CHECK(number{k} == 77);")
        elif type_ in ("int32_t", "int64_t", "size_t", "double"):
            plain(value(function, name))
        else:
            sys.exit(f"make_calls.py knows no good value for {type_} {name} of {function}")
        i += 1

    asking = f"{function}({', '.join(asked)})"
    lines = []
    for line in before:
        ask = re.fullmatch(r"@ASK(\d+):(.*)", line)
        if ask:
            k, size = ask.groups()
            lines.append(f"if ({asking} != LATCHWORK_OK) return -1;")
            lines.append(f"list{k} = malloc((asked{k} + 1) * {size});")
            lines.append(f"CHECK(list{k} != NULL && asked{k} > 0);")
        else:
            lines.append(line.removeprefix("@CLEAR "))
    declarations = [l for l in lines if re.match(r"[\w ]+ \*?\w+ = ", l) and not re.match(r"list\d+ =", l)]
    rest = [l for l in lines if l not in declarations]
    body = declarations + ["latchwork_status status;"] + rest
    body += ["begin(how);", f"status = {function}({', '.join(given)});", "end(how);"] + after + ["return status;"]
    text = f"static latchwork_status call_{function}(const struct how *how, latchwork_error *error)\n{{\n"
    text += "".join(f"  {line}\n" for line in body) + "}\n\n"
    fine = set(NULL_IS_FINE)
    if ("const latchwork_effort*", "effort") in arguments or function == "latchwork_read_machine":
        fine.add("effort")
    must = [(k, n) for k, n in nullable if n not in fine]
    optional = [k for k, n in nullable if (k, n) not in must]
    small = any(following == "capacity" for _, following in arguments)
    entry = f'  {{"{function}", call_{function}, {len(must)}, {{' + ", ".join(f"{{{k}, \"{n}\"}}" for k, n in must) + "}, "
    entry += f"{len(optional)}, {{" + ", ".join(map(str, optional) if optional else ["0"]) + f"}}, {int(small)}}},\n"
    if not must:
        entry = entry.replace(", 0, {},", ', 0, {{0, ""}},')
    return text, entry


def main():
    text = without_comments(pathlib.Path(sys.argv[1]).read_text(encoding="utf-8"))
    handles = {m for m in re.findall(r"typedef struct (latchwork_\w+) \1;", text)}
    structs = {m for m in re.findall(r"typedef struct (latchwork_\w+) \{\s*uint32_t struct_size;", text)}
    elements = {m for m in re.findall(r"typedef struct (latchwork_\w+) \{", text)} - structs  # those without struct_size
    out = ['/* Written by make_calls.py from latchwork.h. */\n#include "calls.h"\n#include "world.h"\n\n',
           "#include <stdlib.h>\n#include <string.h>\n\n",
           "static char poison[1];\n\n",
           "static int all_sevens(const void *bytes, size_t size)\n{\n"
           "  const unsigned char *at = bytes;\n"
           "  while (size > 0 && at[size - 1] == 7) --size;\n"
           "  return size == 0;\n}\n\n"]
    entries, names = [], set()
    for returned, function, arguments in functions(text):
        names.add(function)
        if returned == "latchwork_status":
            body, entry = call_of(function, arguments, handles, structs, elements)
            out.append(body)
            entries.append(entry)
        elif function not in BY_HAND and not function.endswith("_destroy"):
            sys.exit(f"{function} returns no status and is not tested by hand")
    missing = [f"{h}_{verb}" for h in sorted(handles) for verb in ("copy", "equal", "destroy") if f"{h}_{verb}" not in names]
    if missing:
        sys.exit(f"handles that lack a part of their contract: {missing}")
    out.append("const struct call calls[] = {\n" + "".join(entries) + "};\n")
    out.append("const size_t calls_count = sizeof calls / sizeof *calls;\n\n")
    out.append(f"const size_t handles_count = {len(handles)};\n")
    pathlib.Path(sys.argv[2]).write_text("".join(out), encoding="utf-8")


if __name__ == "__main__":
    main()
