"""The main job: a brief goes in; a verified plan, sizes, charts and words come out.

python3 main_job.py BRIEF_FOLDER OUT_FOLDER
"""

import sys

import latchwork as lw


def main(brief_folder: str, out_folder: str) -> None:
    brief = lw.read_brief(brief_folder)
    job = lw.run(brief)
    for index, panel in enumerate(job.article.panels if job.article else []):  # what fits the article, each by itself
        fitted = lw.fitted_brief(brief, job, index)
        lw.write_brief(fitted, f"{out_folder}/{panel.folder}")
        lw.write_job(fitted, lw.run(fitted), f"{out_folder}/{panel.folder}")
    lw.write_job(brief, job, out_folder)
    print(lw.summary(brief, job), end="")
    for stop in job.plan.stops:  # the plan is data: stop by stop, needle by needle
        side = "COR" if stop.carriage_right else "COL"
        print(f"RC {stop.row}, {side}: {len(stop.reforms)} re-formed, {len(stop.crossings)} crossed")


if __name__ == "__main__":
    try:
        main(*sys.argv[1:])
    except lw.Error as error:
        sys.exit(f"{error.code.name}: {error}")
