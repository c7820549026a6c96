"""Spanish column headings of people's own tables."""

from __future__ import annotations

from typing import Final

COLUMNS: Final = {
    "item": "articulo, producto, productos, fruta, nombre, descripcion, ingrediente, insumo, concepto",
    "amount": "cantidad, cant, piezas, pzas, pza, numero, existencia, unidades, peso, contado",
    "unit": "unidad, medida, ud, um, unidad de medida",
    "cost": "costo, coste, importe, total, costo total, coste total, valor, perdida",
    "each": "precio, precio unitario, costo unitario, coste unitario, p unitario, cada uno, precio unidad",
    "day": "fecha, dia, cuando, fecha de entrega, fecha factura",
    "reason": "motivo, razon, causa, por que",
    "pack": "presentacion, caja, tamano, empaque, envase, formato",
}
TABLES: Final = {
    "waste": "merma, mermas, desperdicio, desperdicios, desecho, basura, tirado",
    "deliveries": "entrega, entregas, factura, compras, recibido, pedido, albaran",
    "prices": "precios, lista de precios, tarifa",
    "counts": "inventario, existencias, conteo, recuento",
}
TOTALS: Final = frozenset({"total", "totales", "suma", "subtotal"})
