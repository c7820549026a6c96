"""Every table, as typed models.

Tables of one bar begin their primary key with the bar's id, and so does every
unique key and every reference: a row cannot point into another bar. The few
tables that are needed before the bar is known (bar, person, room, question,
inbox) are the directory; a test lists them by name.
"""

from __future__ import annotations

from datetime import date, datetime
from fractions import Fraction
from typing import Any, ClassVar

from sqlalchemy import (
    JSON,
    BigInteger,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Text,
    UniqueConstraint,
    text,
)
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

from storage.types import Day, Exact, Instant

# SQLite numbers rows by itself only for a plain INTEGER key.
WideId = BigInteger().with_variant(Integer, "sqlite")


class Base(DeclarativeBase):
    """The root of all models, with names for every constraint so that migrations can find them."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s",
            "pk": "pk_%(table_name)s",
        }
    )
    type_annotation_map: ClassVar = {
        datetime: Instant,
        date: Day,
        Fraction: Exact,
        dict[str, Any]: JSON,
        list[Any]: JSON,
        int: BigInteger,
    }


class InBar(Base):
    """A row that belongs to one bar."""

    __abstract__ = True

    bar_id: Mapped[int] = mapped_column(ForeignKey("bar.id"), primary_key=True, sort_order=-2)


class Numbered(InBar):
    """A row of one bar with a number that counts up within that bar."""

    __abstract__ = True

    id: Mapped[int] = mapped_column(primary_key=True, autoincrement=False, sort_order=-1)


class Bar(Base):
    """One bar. What may be set without a migration lives in `settings`."""

    __tablename__ = "bar"

    id: Mapped[int] = mapped_column(WideId, primary_key=True, autoincrement=True)
    name: Mapped[str] = mapped_column(String(80))
    language: Mapped[str] = mapped_column(String(12))
    currency: Mapped[str] = mapped_column(String(3))
    units: Mapped[str] = mapped_column(String(12))
    zone: Mapped[str] = mapped_column(String(64))
    closing_minute: Mapped[int]
    jurisdiction: Mapped[str] = mapped_column(String(12))
    settings: Mapped[dict[str, Any]]
    team_room_id: Mapped[int | None]  # no foreign key: room points here, and a circle helps nobody
    # Counts up with every change of nouns or settings, so that caches know when to look again.
    revision: Mapped[int] = mapped_column(default=0)
    created_at: Mapped[datetime]
    delete_after: Mapped[datetime | None]


class Counter(InBar):
    """The last number given out for one kind of row of one bar."""

    __tablename__ = "counter"

    name: Mapped[str] = mapped_column(String(40), primary_key=True)
    value: Mapped[int]


class Person(Base):
    """Somebody who writes to the program, known by a channel and that channel's id."""

    __tablename__ = "person"
    __table_args__ = (UniqueConstraint("channel", "outside_id"),)

    id: Mapped[int] = mapped_column(WideId, primary_key=True, autoincrement=True)
    channel: Mapped[str] = mapped_column(String(12))
    outside_id: Mapped[str] = mapped_column(String(64))
    name: Mapped[str] = mapped_column(String(128))
    language: Mapped[str | None] = mapped_column(String(12))
    bar_id: Mapped[int | None] = mapped_column(ForeignKey("bar.id"))  # the bar they stand in now
    # The number of the message by which they last changed bars: buttons of older ones are of another bar.
    bar_since: Mapped[int | None]
    wrong_codes: Mapped[int] = mapped_column(Integer, default=0, server_default="0")  # tried in a row
    wrong_code_at: Mapped[datetime | None]


class Room(Base):
    """A chat: one person's private one, or a group that belongs to one bar."""

    __tablename__ = "room"
    __table_args__ = (UniqueConstraint("channel", "outside_id"),)

    id: Mapped[int] = mapped_column(WideId, primary_key=True, autoincrement=True)
    channel: Mapped[str] = mapped_column(String(12))
    outside_id: Mapped[str] = mapped_column(String(64))
    private: Mapped[bool]
    title: Mapped[str] = mapped_column(String(128), default="")
    bar_id: Mapped[int | None] = mapped_column(ForeignKey("bar.id"))
    thread: Mapped[int | None]
    reachable: Mapped[bool] = mapped_column(default=True)


class Member(InBar):
    """A person's place in a bar: owner, manager or member."""

    __tablename__ = "member"

    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    role: Mapped[str] = mapped_column(String(12))
    name: Mapped[str] = mapped_column(String(128))
    language: Mapped[str | None] = mapped_column(String(12))
    room_id: Mapped[int | None] = mapped_column(ForeignKey("room.id"))  # their private chat
    joined_at: Mapped[datetime]
    left_at: Mapped[datetime | None]


class Invite(Numbered):
    """A joining code, kept only as its hash."""

    __tablename__ = "invite"

    code_hash: Mapped[str] = mapped_column(String(64))
    role: Mapped[str] = mapped_column(String(12))
    made_by: Mapped[int]
    made_at: Mapped[datetime]
    expires_at: Mapped[datetime]
    uses_left: Mapped[int]


class Ingredient(Numbered):
    """Anything a bar buys and uses, fruit included."""

    __tablename__ = "ingredient"
    __table_args__ = (UniqueConstraint("bar_id", "match_key"),)

    name: Mapped[str] = mapped_column(String(80))
    match_key: Mapped[str] = mapped_column(String(120))
    kind: Mapped[str] = mapped_column(String(24))
    strength_percent: Mapped[Fraction | None]
    density_g_per_ml: Mapped[Fraction | None]
    density_source: Mapped[str | None] = mapped_column(String(200))
    grams_each: Mapped[Fraction | None]
    food_grade: Mapped[str | None] = mapped_column(String(16))
    details: Mapped[dict[str, Any]] = mapped_column(default=dict)
    made_at: Mapped[datetime]
    archived_at: Mapped[datetime | None]


class Formula(Numbered):
    """A preparation by name; what is in it stands in its versions."""

    __tablename__ = "formula"
    __table_args__ = (UniqueConstraint("bar_id", "match_key"),)

    name: Mapped[str] = mapped_column(String(80))
    match_key: Mapped[str] = mapped_column(String(120))
    preparation: Mapped[str] = mapped_column(String(24))
    latest: Mapped[int]
    made_at: Mapped[datetime]
    archived_at: Mapped[datetime | None]


class FormulaVersion(InBar):
    """What a formula said from one moment on. Never changed once written."""

    __tablename__ = "formula_version"
    __table_args__ = (ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),)

    formula_id: Mapped[int] = mapped_column(primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True)
    rest_hours: Mapped[Fraction]
    discard_days: Mapped[int]
    sprays_low: Mapped[Fraction | None]
    sprays_high: Mapped[Fraction | None]
    spray_ml_low: Mapped[Fraction | None]
    spray_ml_high: Mapped[Fraction | None]
    garnish_id: Mapped[int | None]  # the fruit whose fresh garnish this replaces
    note: Mapped[str] = mapped_column(Text, default="")
    made_at: Mapped[datetime]
    made_by: Mapped[int]


class FormulaLine(InBar):
    """One ingredient of a formula version, in the unit it was typed in."""

    __tablename__ = "formula_line"
    __table_args__ = (
        ForeignKeyConstraint(
            ["bar_id", "formula_id", "number"],
            ["formula_version.bar_id", "formula_version.formula_id", "formula_version.number"],
        ),
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
    )

    formula_id: Mapped[int] = mapped_column(primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    ingredient_id: Mapped[int]
    amount: Mapped[Fraction]
    unit: Mapped[str] = mapped_column(String(40))


class Price(Numbered):
    """What a pack cost. A correction is a new row that points to the old one."""

    __tablename__ = "price"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "id"),
    )

    ingredient_id: Mapped[int]
    pack_amount: Mapped[Fraction]
    pack_unit: Mapped[str] = mapped_column(String(40))
    price_minor: Mapped[int]
    garnishes_low: Mapped[Fraction | None]
    garnishes_high: Mapped[Fraction | None]
    at: Mapped[datetime]
    by: Mapped[int]
    corrects: Mapped[int | None]
    void: Mapped[bool] = mapped_column(default=False)  # true: the corrected row never was


class Batch(Numbered):
    """One making of a formula, with a frozen copy of all it was made from."""

    __tablename__ = "batch"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
        Index(None, "bar_id", "state"),
        Index(None, "bar_id", "formula_id"),
    )

    formula_id: Mapped[int]
    version: Mapped[int]
    state: Mapped[str] = mapped_column(String(12))
    total_ml: Mapped[Fraction]
    made_at: Mapped[datetime]
    made_by: Mapped[int]
    rest_until: Mapped[datetime]
    discard_on: Mapped[date]
    opened_at: Mapped[datetime | None]
    ended_at: Mapped[datetime | None]
    lost_ml: Mapped[Fraction | None]
    lost_reason: Mapped[str | None] = mapped_column(String(80))
    clarity: Mapped[str | None] = mapped_column(String(12))
    frozen: Mapped[dict[str, Any]]


class BatchLine(InBar):
    """One ingredient that went into a batch, with its lot where noted."""

    __tablename__ = "batch_line"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "lot"),
    )

    batch_id: Mapped[int] = mapped_column(primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    ingredient_id: Mapped[int]
    amount: Mapped[Fraction]
    unit: Mapped[str] = mapped_column(String(40))
    lot: Mapped[str | None] = mapped_column(String(60))


class BatchEvent(Numbered):
    """Something that happened to a batch: made, checked, opened, used up, discarded, undone."""

    __tablename__ = "batch_event"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        Index(None, "bar_id", "batch_id"),
    )

    batch_id: Mapped[int]
    what: Mapped[str] = mapped_column(String(16))
    clarity: Mapped[str | None] = mapped_column(String(12))
    note: Mapped[str] = mapped_column(Text, default="")
    photo: Mapped[str | None] = mapped_column(String(200))
    at: Mapped[datetime]
    by: Mapped[int]
    corrects: Mapped[int | None]


class Waste(Numbered):
    """Fruit thrown out. An undo is a row with the opposite signs that points to the first."""

    __tablename__ = "waste"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        UniqueConstraint("bar_id", "source", "line"),
        Index(None, "bar_id", "business_day"),
    )

    ingredient_id: Mapped[int]
    # Thousandths, as whole numbers, so that the database can add them up exactly.
    count_milli: Mapped[int | None]
    grams_milli: Mapped[int | None]
    reason: Mapped[str] = mapped_column(String(40))
    business_day: Mapped[date]
    cost_minor: Mapped[int | None]
    price_id: Mapped[int | None]
    at: Mapped[datetime]
    by: Mapped[int]
    corrects: Mapped[int | None]
    source: Mapped[str] = mapped_column(String(80))
    line: Mapped[int]
    late: Mapped[bool] = mapped_column(default=False)  # logged in the bar's late shift


class Delivery(Numbered):
    """Something bought in. An undo is a row with the opposite signs that points to the first."""

    __tablename__ = "delivery"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        UniqueConstraint("bar_id", "source", "line"),
        Index(None, "bar_id", "ingredient_id", "business_day"),
        Index(None, "bar_id", "business_day"),
    )

    ingredient_id: Mapped[int]
    dimension: Mapped[str] = mapped_column(String(8))
    amount_milli: Mapped[int]  # thousandths of mL, g or pieces, so that the database can add them up
    cost_minor: Mapped[int | None]
    price_id: Mapped[int | None]
    business_day: Mapped[date]
    at: Mapped[datetime]
    by: Mapped[int]
    corrects: Mapped[int | None]
    source: Mapped[str] = mapped_column(String(80))
    line: Mapped[int]


class StockCount(Numbered):
    """What somebody counted on hand. A void row takes the one it points to back."""

    __tablename__ = "stock_count"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "id"),
    )

    ingredient_id: Mapped[int]
    dimension: Mapped[str] = mapped_column(String(8))
    amount_milli: Mapped[int]
    business_day: Mapped[date]
    at: Mapped[datetime]
    by: Mapped[int]
    # The last numbers of each when it was counted: only what has a higher one came or went after it.
    after_delivery: Mapped[int] = mapped_column(default=0, server_default="0")
    after_batch: Mapped[int] = mapped_column(default=0, server_default="0")
    after_waste: Mapped[int] = mapped_column(default=0, server_default="0")
    corrects: Mapped[int | None]
    void: Mapped[bool] = mapped_column(default=False)


class PeeledFruit(Numbered):
    """Fruit whose peel was used and whose flesh is left, with the moment at which that counts as lost."""

    __tablename__ = "peeled_fruit"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "lost_at"),
        Index(None, "bar_id", "lost_at"),
    )

    ingredient_id: Mapped[int]
    count_milli: Mapped[int]
    business_day: Mapped[date]
    lost_at: Mapped[datetime]
    at: Mapped[datetime]
    by: Mapped[int]


class Juicing(Numbered):
    """Fruit juiced and what it gave: the bar's own yield. A void row takes the one it points to back."""

    __tablename__ = "juicing"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "id"),
    )

    ingredient_id: Mapped[int]
    count_milli: Mapped[int]
    volume_ml: Mapped[Fraction]
    business_day: Mapped[date]
    at: Mapped[datetime]
    by: Mapped[int]
    corrects: Mapped[int | None]
    void: Mapped[bool] = mapped_column(default=False)


class PeeledUse(Numbered):
    """What became of peeled fruit: juiced, binned, batch, or undone. An undo has the opposite sign."""

    __tablename__ = "peeled_use"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "peeled_id"], ["peeled_fruit.bar_id", "peeled_fruit.id"]),
        ForeignKeyConstraint(["bar_id", "waste_id"], ["waste.bar_id", "waste.id"]),
        ForeignKeyConstraint(["bar_id", "juicing_id"], ["juicing.bar_id", "juicing.id"]),
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        Index(None, "bar_id", "peeled_id"),
        Index(None, "bar_id", "waste_id"),
    )

    peeled_id: Mapped[int]
    what: Mapped[str] = mapped_column(String(12))
    count_milli: Mapped[int]
    waste_id: Mapped[int | None]
    juicing_id: Mapped[int | None]
    batch_id: Mapped[int | None]
    at: Mapped[datetime]
    by: Mapped[int]
    corrects: Mapped[int | None]


class Entry(Numbered):
    """The bar's log: who did what, when, to what; an undo points to what it undid."""

    __tablename__ = "entry"
    __table_args__ = (
        UniqueConstraint("bar_id", "undo_of"),
        Index(None, "bar_id", "by", "id"),
        Index(None, "bar_id", "source"),
    )

    at: Mapped[datetime]
    by: Mapped[int]
    what: Mapped[str] = mapped_column(String(24))
    details: Mapped[dict[str, Any]]
    undo_of: Mapped[int | None]
    source: Mapped[str | None] = mapped_column(String(80))  # the key of the message that said it
    corrects: Mapped[int | None]  # the entry in whose place this one stands, after the message was edited


class Reminder(Numbered):
    """One thing to say once, at one time, in one place."""

    __tablename__ = "reminder"
    __table_args__ = (
        UniqueConstraint("bar_id", "key"),
        Index(None, "channel", "state", "due_at"),
        Index(None, "bar_id", "batch_id"),
    )

    channel: Mapped[str] = mapped_column(String(12))
    key: Mapped[str] = mapped_column(String(80))
    kind: Mapped[str] = mapped_column(String(16))
    batch_id: Mapped[int | None]
    person_id: Mapped[int | None]
    details: Mapped[dict[str, Any]] = mapped_column(default=dict)
    first_due_at: Mapped[datetime]
    due_at: Mapped[datetime]
    state: Mapped[str] = mapped_column(String(12))
    attempts: Mapped[int] = mapped_column(default=0)
    unsure: Mapped[bool] = mapped_column(default=False)  # an earlier try may have arrived
    lease_until: Mapped[datetime | None]
    sent_at: Mapped[datetime | None]
    done_by: Mapped[int | None]
    last_error: Mapped[str | None] = mapped_column(String(200))


class Sprayer(Numbered):
    """One sprayer of the bar, known by a name; what it gives stands in its runs."""

    __tablename__ = "sprayer"
    __table_args__ = (UniqueConstraint("bar_id", "match_key"),)

    name: Mapped[str] = mapped_column(String(80))
    match_key: Mapped[str] = mapped_column(String(120))
    made_at: Mapped[datetime]
    archived_at: Mapped[datetime | None]


class SprayerRun(Numbered):
    """One weighing of a sprayer: masses before and after so many sprays of a mix of this density.

    A run that was taken back stays, with the moment it was.
    """

    __tablename__ = "sprayer_run"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "sprayer_id"], ["sprayer.bar_id", "sprayer.id"]),
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
        Index(None, "bar_id", "sprayer_id"),
    )

    sprayer_id: Mapped[int]
    formula_id: Mapped[int | None]  # what was in it; None for water
    before_g: Mapped[Fraction]
    after_g: Mapped[Fraction]
    step_g: Mapped[Fraction]  # the last figure that the scale showed
    sprays: Mapped[int]
    density_g_per_ml: Mapped[Fraction]
    priming: Mapped[bool]
    at: Mapped[datetime]
    by: Mapped[int]
    undone_at: Mapped[datetime | None]


class FormulaSprayer(InBar):
    """The sprayer that a formula is filled into."""

    __tablename__ = "formula_sprayer"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
        ForeignKeyConstraint(["bar_id", "sprayer_id"], ["sprayer.bar_id", "sprayer.id"]),
    )

    formula_id: Mapped[int] = mapped_column(primary_key=True)
    sprayer_id: Mapped[int]


class StockPar(InBar):
    """The least that the bar wants on hand of an ingredient; `told`: that it fell below was said already."""

    __tablename__ = "stock_par"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
    )

    ingredient_id: Mapped[int] = mapped_column(primary_key=True)
    amount: Mapped[Fraction]
    unit: Mapped[str] = mapped_column(String(40))
    told: Mapped[bool] = mapped_column(default=False)


class DrinksCount(Numbered):
    """How many drinks were poured on a business day: in all, with one formula, or with one garnish.

    The last row of a day and subject that no void row points to is the one that holds.
    """

    __tablename__ = "drinks_count"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "business_day"),
    )

    business_day: Mapped[date]
    formula_id: Mapped[int | None]
    ingredient_id: Mapped[int | None]
    drinks: Mapped[int]
    ran_out: Mapped[bool] = mapped_column(default=False)  # more might have been wanted
    at: Mapped[datetime]
    by: Mapped[int]
    corrects: Mapped[int | None]
    void: Mapped[bool] = mapped_column(default=False)


class Trial(Numbered):
    """Variants of one formula version made and tasted side by side."""

    __tablename__ = "trial"
    __table_args__ = (
        ForeignKeyConstraint(
            ["bar_id", "formula_id", "version"],
            ["formula_version.bar_id", "formula_version.formula_id", "formula_version.number"],
        ),
        Index(None, "bar_id", "state"),
    )

    formula_id: Mapped[int]
    version: Mapped[int]
    blind: Mapped[bool]
    total_ml: Mapped[Fraction]  # how much is made of each
    state: Mapped[str] = mapped_column(String(12))
    seed: Mapped[int]  # hides the order of the codes
    promoted: Mapped[int | None]  # the variant that became the next version
    at: Mapped[datetime]
    by: Mapped[int]


class TrialVariant(InBar):
    """One variant of a trial: its lines as [ingredient number, amount, unit], and its code once tasted."""

    __tablename__ = "trial_variant"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "trial_id"], ["trial.bar_id", "trial.id"]),
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        UniqueConstraint("bar_id", "trial_id", "code"),
    )

    trial_id: Mapped[int] = mapped_column(primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True)
    code: Mapped[str | None] = mapped_column(String(4))
    changed: Mapped[str] = mapped_column(Text)
    lines: Mapped[list[Any]]
    batch_id: Mapped[int | None]
    void: Mapped[bool] = mapped_column(default=False)


class TrialScore(Numbered):
    """One member's scores of one variant, 1 to 5. A void row takes the one it points to back."""

    __tablename__ = "trial_score"
    __table_args__ = (
        ForeignKeyConstraint(
            ["bar_id", "trial_id", "variant"],
            ["trial_variant.bar_id", "trial_variant.trial_id", "trial_variant.number"],
        ),
        Index(None, "bar_id", "trial_id"),
    )

    trial_id: Mapped[int]
    variant: Mapped[int]
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    given: Mapped[dict[str, Any]]  # aspect: score
    at: Mapped[datetime]
    corrects: Mapped[int | None]
    void: Mapped[bool] = mapped_column(default=False)


class Upload(Numbered):
    """A file somebody sent to be taken in, kept until they say yes."""

    __tablename__ = "upload"

    name: Mapped[str] = mapped_column(String(120))
    content: Mapped[bytes] = mapped_column(LargeBinary)
    at: Mapped[datetime]
    by: Mapped[int]


class Imported(InBar):
    """What was taken in from a file, by its reference there, so that the same row comes in once."""

    __tablename__ = "imported"

    kind: Mapped[str] = mapped_column(String(16), primary_key=True)
    ref: Mapped[str] = mapped_column(String(80), primary_key=True)
    number: Mapped[int]


class Question(Base):
    """A question in progress between the program and one person in one chat."""

    __tablename__ = "question"

    room_id: Mapped[int] = mapped_column(ForeignKey("room.id"), primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    nonce: Mapped[int]
    state: Mapped[dict[str, Any]]
    asked_at: Mapped[datetime]
    message_id: Mapped[str | None] = mapped_column(String(64))


class Inbox(Base):
    """What arrived, written down before it is confirmed to the sender."""

    __tablename__ = "inbox"
    __table_args__ = (
        Index(None, "state", "received_at"),
        # Only what is not finished: a few rows, however many updates were kept.
        Index(
            "ix_inbox_unfinished",
            "channel",
            "chat",
            "update_id",
            sqlite_where=text("state < 2"),
            postgresql_where=text("state < 2"),
        ),
    )

    channel: Mapped[str] = mapped_column(String(12), primary_key=True)
    update_id: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    payload: Mapped[str] = mapped_column(Text)
    state: Mapped[int] = mapped_column(Integer)
    replies: Mapped[str | None] = mapped_column(Text)
    received_at: Mapped[datetime]
    attempts: Mapped[int] = mapped_column(Integer, default=0)
    chat: Mapped[str] = mapped_column(String(40), server_default="")
    owner: Mapped[str | None] = mapped_column(String(32))
    lease_until: Mapped[datetime | None]
