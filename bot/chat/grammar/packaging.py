"""Save the grammar's tables into the package during the build, for a fast first start."""

from __future__ import annotations

import sys
from pathlib import Path

from setuptools.command.build_py import build_py


class BuildWithTables(build_py):  # type: ignore[misc] # setuptools has no types
    """Copies the packages, then saves the tables beside the grammar in the copy."""

    def run(self) -> None:
        """Build the packages. An editable install has no copy and uses the cache folder of the user."""
        super().run()
        if self.editable_mode:
            return
        sys.path.insert(0, str(Path.cwd()))
        from bot.chat.grammar import tables  # noqa: PLC0415 - needs the path above

        copied = Path(self.build_lib, "bot", "chat", "grammar")
        tables.save_shipped(copied / tables.SHIPPED.name)
