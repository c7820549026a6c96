"""python -m tests.understanding [--train] [--write]: train the rankers, measure, write TABLE.md."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path

from tests.understanding import clinc, measure
from tests.understanding.measure import Figures, Result
from tests.understanding.phrasebooks import LANGUAGES, training
from tests.understanding.trainer import train

_TABLE = Path(__file__).with_name("TABLE.md")
_HEAD = "| wish | lines | first | in three | wrong read | wrong write |"
_MOST_CONFUSIONS = 15


def _row(name: str, one: Figures) -> str:
    cells = (f"{share:.1%}" for share in (one.first, one.three, one.wrong_read, one.wrong_write))
    return f"| {name} | {one.lines} | {' | '.join(cells)} |"


def tell(result: Result) -> Iterator[str]:
    """Yield the lines of one language's report."""
    learnt = len(training(result.language))
    yield f"## {result.language}: {learnt} lines to learn from, {len(result.lines)} held out"
    yield ""
    yield _HEAD
    yield "|" + " -- |" * 6
    wished = result.of_wishes()
    yield _row("**all with one wish**", measure.figures(wished))
    for name, group in (
        ("those held out first", [one for one in wished if not (one[0].later or one[0].by_stranger)]),
        ("by a writer of whom nothing is learnt", [one for one in wished if one[0].by_stranger]),
    ):
        yield _row(f"**{name}**", measure.figures(group))
    for wish, one in measure.by_wish(result).items():
        yield _row(wish, one)
    yield ""
    none, two = result.of("none"), result.of("two")
    run = sum(outcome.ran for _phrase, outcome in none) / max(1, len(none))
    wrote = sum(outcome.wrote for _phrase, outcome in none)
    single = sum(len(outcome.shown) == 1 for _phrase, outcome in none) / max(1, len(none))
    both = sum(measure.both_offered(*one) for one in two) / max(1, len(two))
    yield f"* Lines that are no wish: {len(none)}; answered as a command {run:.1%}, written {wrote}; "
    yield f"  shown as one sure reading {single:.1%}."
    yield f"* Lines with two wishes: {len(two)}; both shown {both:.1%}."
    took, free = measure.milliseconds(result, taken=True), measure.milliseconds(result, taken=False)
    reader = measure.reader_milliseconds(result)
    yield f"* Median time with the answer: {took:.1f} ms for a line that the grammar takes,"
    yield f"  {free:.1f} ms for another; {reader:.1f} ms of that is the reader."
    worst = measure.confusions(result).most_common(_MOST_CONFUSIONS)
    yield (
        "* Worst confusions: " + "; ".join(f"{wish} as {said} {count}" for (wish, said), count in worst) + "."
    )
    yield ""


def tell_open_data(file: Path | None) -> Iterator[str]:
    """Yield the lines about the open data: the sample, and a whole file."""
    yield "## CLINC150, open data: the same features and trainer"
    yield ""
    yield "| data | intents | first | in three | in scope: kept | out of scope: refused |"
    yield "|" + " -- |" * 6
    yield clinc.tell(clinc.judge(clinc.sample()), "sample, see open_data")
    if file is not None:
        yield clinc.tell(clinc.judge(clinc.whole(file)), file.name)
    yield "| linear reader of scikit-learn on data_small.json, for comparison | 150 | 0.908 | 0.967 | | |"
    yield ""


def main() -> None:
    """Run what the arguments ask for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--train", action="store_true", help="train the rankers first")
    parser.add_argument("--write", action="store_true", help="write TABLE.md")
    parser.add_argument("--show", default="", help="print the misread lines of a wish, or of 'all'")
    parser.add_argument("--clinc", type=Path, help="judge the reader on a file of CLINC150 as well")
    parser.add_argument("languages", nargs="*", default=LANGUAGES)
    asked = parser.parse_args()
    if asked.train:
        for language in asked.languages:
            train(language)
    results = [measure.measure(language) for language in asked.languages]
    lines = [line for result in results for line in tell(result)]
    lines += tell_open_data(asked.clinc)
    print("\n".join(lines))
    for result in results if asked.show else []:
        for phrase, outcome in result.lines:
            if asked.show in {"all", phrase.wish} and not measure.is_first(phrase, outcome):
                shown = [min(one) for one in outcome.shown]
                print(
                    phrase.wish,
                    "|",
                    phrase.text,
                    "|",
                    shown,
                    "ran" if outcome.ran else "",
                    outcome.wrote or "",
                )
    if asked.write:
        _TABLE.write_text("# How well lines are understood\n\n" + "\n".join(lines), encoding="utf-8")


if __name__ == "__main__":
    main()
