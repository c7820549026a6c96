"""A Bot API server on loopback and the phones of its users.

`Server` answers python-telegram-bot as Telegram does, limits and refusals included; `Person` and `Group` are
the users: they write, tap and wait for the replies.
"""

from tests.api.faults import Fault
from tests.api.group import Group
from tests.api.person import Person
from tests.api.seen import Button, Followed, Seen
from tests.api.server import BOT_USERNAME, TOKEN, Server, free_port

__all__ = [
    "BOT_USERNAME",
    "TOKEN",
    "Button",
    "Fault",
    "Followed",
    "Group",
    "Person",
    "Seen",
    "Server",
    "free_port",
]
