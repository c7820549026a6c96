"""English column headings of people's own tables."""

from __future__ import annotations

from typing import Final

COLUMNS: Final = {
    "item": "item, items, fruit, product, products, name, description, ingredient, article, goods, what",
    "amount": "qty, quantity, amount, count, counted, pcs, pieces, units, on hand, weight, thrown out",
    "unit": "unit, uom, measure, unit of measure",
    "cost": "cost, total, total cost, line total, value, amount paid, price paid, cost eur, cost usd, loss",
    "each": "price, unit price, price each, each, unit cost, price per unit, cost each, cost per unit",
    "day": "date, day, when, business day, shift date, invoice date, delivered, delivery date",
    "reason": "reason, why, cause, waste reason, reason code",
    "pack": "pack, pack size, size, case size, case, pack amount, per case",
}
TABLES: Final = {
    "waste": "waste, wastage, thrown out, spoilage, spoiled, binned, waste log, waste sheet",
    "deliveries": "delivery, deliveries, invoice, purchases, bought, received, order",
    "prices": "prices, price list, pricelist, costs",
    "counts": "inventory, stock take, stocktake, stock count, count sheet, on hand",
}
TOTALS: Final = frozenset({"total", "totals", "sum", "grand total", "subtotal"})
