"""The parameters of one request, parsed as Telegram does: form, multipart or JSON."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import Any
from urllib.parse import parse_qsl

from tornado.httputil import HTTPFile, HTTPServerRequest, parse_multipart_form_data

from tests.api.refusals import JsonDict, bad


@dataclass(frozen=True, slots=True)
class Upload:
    """A file that came with the request."""

    name: str
    content: bytes
    content_type: str


class Params:
    """Typed access to the parameters; a missing one is None or the given default."""

    def __init__(self, values: JsonDict, uploads: dict[str, Upload] | None = None) -> None:
        self.values = values
        self.uploads = uploads or {}

    def text(self, name: str) -> str | None:
        """A string, or None if missing."""
        value = self.values.get(name)
        return value if value is None or isinstance(value, str) else json.dumps(value)

    def integer(self, name: str, default: int | None = None) -> int | None:
        """An integer; an invalid one counts as missing, as with Telegram."""
        try:
            return int(self.values[name])
        except (KeyError, ValueError, TypeError):
            return default

    def seconds(self, name: str) -> float:
        """A time in seconds, 0 if missing."""
        try:
            return float(self.values[name])
        except (KeyError, ValueError, TypeError):
            return 0.0

    def flag(self, name: str) -> bool:
        """A boolean in any of Telegram's spellings."""
        return str(self.values.get(name, "")).lower() in {"true", "1", "yes"}

    def json(self, name: str) -> Any:
        """A value sent as JSON text (or as JSON itself), or None if missing."""
        value = self.values.get(name)
        if not isinstance(value, str):
            return value
        if not value:
            return None
        try:
            return json.loads(value)
        except ValueError as error:
            raise bad(f"can't parse {name} JSON object") from error

    def upload(self, name: str) -> Upload | None:
        """The file sent in the field `name`, or the one referenced by attach://."""
        pointer = self.values.get(name)
        if isinstance(pointer, str) and pointer.startswith("attach://"):
            return self.uploads.get(pointer.removeprefix("attach://"))
        return self.uploads.get(name)


def read_params(request: HTTPServerRequest) -> Params:
    """All parameters of `request`: those of the query string, then those of the body."""
    values: JsonDict = dict(parse_qsl(request.query, keep_blank_values=True)) if request.query else {}
    content_type = request.headers.get("Content-Type", "")
    if content_type.startswith("application/x-www-form-urlencoded"):
        values.update(parse_qsl(request.body.decode(), keep_blank_values=True))
    elif content_type.startswith("application/json"):
        values.update(json.loads(request.body or b"{}"))
    elif content_type.startswith("multipart/form-data"):
        return _multipart(request, values, content_type)
    return Params(values)


def _multipart(request: HTTPServerRequest, values: JsonDict, content_type: str) -> Params:
    arguments: dict[str, list[bytes]] = {}
    files: dict[str, list[HTTPFile]] = {}
    boundary = content_type.partition("boundary=")[2].partition(";")[0]
    parse_multipart_form_data(boundary.encode(), request.body, arguments, files)
    values.update({name: given[-1].decode() for name, given in arguments.items()})
    uploads = {
        name: Upload(given[-1].filename, given[-1].body, given[-1].content_type)
        for name, given in files.items()
    }
    return Params(values, uploads)
