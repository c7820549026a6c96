"""Write the library thermo's UNIFAC tables to the program's data file: python -m tests.unifac_tables.

The library depends on seventy megabytes of other packages, and the program would use only these published
numbers. A test compares the file with the library's own tables.
"""

from __future__ import annotations

import argparse
import json
from typing import Any

from thermo import unifac

from bot.trade.liquids.clearing.substances import Model
from bot.trade.liquids.clearing.unifac_groups import FILE


def published() -> dict[str, dict[str, Any]]:
    """Return the tables as the file holds them.

    Of each subgroup: main group, volume R, surface Q. Of each pair of main groups: the interaction
    parameter a in K, and of the Dortmund model also b and c in 1/K, in (a + b T + c T^2) / T.
    """
    sources = {
        Model.ORIGINAL: (unifac.UFSG, unifac.UFIP),
        Model.DORTMUND: (unifac.DOUFSG, unifac.DOUFIP2016),
    }
    return {
        model.name.casefold(): {
            "subgroups": {str(number): [one.main_group_id, one.R, one.Q] for number, one in groups.items()},
            "interactions": {
                str(main): {str(other): _three(found) for other, found in row.items()}
                for main, row in pairs.items()
            },
        }
        for model, (groups, pairs) in sources.items()
    }


def _three(found: float | tuple[float, float, float]) -> list[float]:
    return list(found) if isinstance(found, tuple) else [found, 0.0, 0.0]


def as_text(tables: dict[str, dict[str, Any]]) -> str:
    """Return the tables as JSON, one subgroup or main group a line."""
    parts = []
    for model, kinds in tables.items():
        inner = []
        for kind, rows in kinds.items():
            lines = ",\n".join(f'   "{key}": {json.dumps(row)}' for key, row in rows.items())
            inner.append(f'  "{kind}": {{\n{lines}\n  }}')
        parts.append(f' "{model}": {{\n' + ",\n".join(inner) + "\n }")
    return "{\n" + ",\n".join(parts) + "\n}\n"


if __name__ == "__main__":
    argparse.ArgumentParser(prog="python -m tests.unifac_tables", description=__doc__).parse_args()
    FILE.write_text(as_text(published()), "utf-8")
