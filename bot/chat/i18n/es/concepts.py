"""Groups of Spanish words that mean much the same behind a bar, for the reader of free lines.

The words are without accents. A word may stand in several groups.
"""

from __future__ import annotations

from typing import Final

CONCEPTS: Final[dict[str, str]] = {
    "also": "y e además ademas también tambien luego más",
    "throw": (
        "tirar tire tiro tiramos tirado tirada tirados tirando boto botar bote botamos botado "
        "botaron eche echar echamos basura desechar deseche desecho descarte descartar descartado "
        "descartados merma mermas mermaron volaron volo fueron desperdicio desperdicie "
        "desperdiciamos descarto tacho bolsa cubo zafacon"
    ),
    "lose": "perdi perdio perdieron perdimos perdida perdidas falta faltan desaparecio desaparecieron",
    "spoil": (
        "podrido podrida podridos podridas pudrio pudrieron moho mohoso mohosa mohosos mohosas "
        "enmohecieron enmohecio feo fea feas feos blandas blandos blanda blando aguadas aguados "
        "secas secos seca seco pasadas pasados pasada maduras golpeadas golpeados magulladas "
        "aplastadas pochas pochos pocha echo echaron estropearon estropeadas dano danadas negras"
    ),
    "fruit": (
        "fruta frutas citricos naranjas limones limas toronjas pomelos limon naranja lima toronja pomelo"
    ),
    "buy": (
        "compre compramos comprar compra llego llegaron llega entrego entregaron recibi recibimos "
        "recibir pedido pedi trajo trajeron entrada entraron proveedor mercado frutero factura "
        "entrega surtido surtieron"
    ),
    "price": (
        "precio precios cuesta cuestan costo costaron cuanto vale valen sale salen pague pagamos "
        "pagar cobra cobran cobraron euros pesos dolares subio subieron bajo bajaron caro caros "
        "barato barata"
    ),
    "worth": (
        "ahorro ahorrado ahorramos ahorrando ahorra conviene compensa merece rentable ganancia diferencia"
    ),
    "make": (
        "hacer hago haz hice hicimos hecho prepare preparar preparamos preparado elaborar elabore "
        "mezcle mezclar saque sacar armar arme batch tanda lote cocine montar monte"
    ),
    "size": (
        "doble triple mitad medio media duplicar duplica triplicar escala escalar litro litros ml "
        "botellas botella frascos botes"
    ),
    "strong": (
        "fuerte graduacion grados fuerza alcohol rebajar bajar diluir diluyo diluido agua "
        "alcoholimetro porcentaje volumen densimetro"
    ),
    "clear": (
        "claro clara transparente limpio limpia turbio turbia enturbia enturbiar enturbio nublado "
        "nublada lechoso lechosa velado velada separa separo separado separada separar capas "
        "cortado cortada opaco"
    ),
    "look": "veo ve mire mirar revise revisar revisa quedo luce aspecto checar cheque pinta",
    "reasonwhy": "porque motivo razon causa",
    "swap": "cambiar cambio lugar vez sustituir sustituyo reemplazar usar uso vodka otro",
    "dose": "dosis limite limites trago copa coctel bebida miligramos mg lleva",
    "weigh": "pesa peso pesar pesan densidad gramos balanza bascula",
    "sprayer": (
        "pulverizador pulverizadores atomizador atomizadores spray sprays rociador rociadores "
        "bomba bombas pulsacion pulsaciones disparo disparos spritz aspersor gatillo"
    ),
    "calibrate": "calibrar calibro calibra medir calibracion",
    "ready": "listo lista listos listas reposo reposado reposada reposando reposar descansando termino",
    "expire": "caduca caducan caducidad vence vencen vencimiento expira fecha dura vencido pasa",
    "open": ("abri abre abrir abierto abierta abrimos empece empezar empezamos destape destapar estrene"),
    "empty": (
        "acabo acabe acabamos agoto agotado vacio vacia termino terminamos terminado gastado "
        "gaste gasto ultimo"
    ),
    "label": "etiqueta etiquetas imprimir imprime imprimeme pegatina pegatinas sticker",
    "lot": "lote lotes partida partidas numero codigo",
    "trace": "cuales llevan lleva contienen trazabilidad rastrear rastrea",
    "photo": "foto fotos imagen imagenes",
    "recipe": "receta recetas formula formulas ficha fichas ingredientes especificacion recetario libro",
    "new": "nueva nuevo nuevas anade anadir agrega agregar crear crea apunta apuntar anota anotar",
    "change": (
        "cambia cambiar modifica modificar ajusta ajustar edita editar sube subir baja bajar "
        "actualiza actualizar corrige"
    ),
    "name": "nombre llama llame llamar renombra renombrar llamarse",
    "archive": "archiva archivar quita quitar retira retirar borra borrar guarda elimina eliminar saca",
    "nothing": "nada ninguna ninguno cero limpio limpia",
    "peel": (
        "pele pelar pelada peladas pelado pelados pelamos cascara cascaras piel pieles twist "
        "twists garnish ralladura ralle adorno desnudas"
    ),
    "juice": "jugo zumo exprimi exprimir exprimimos exprimidas saque rindieron rindio jugos zumos",
    "acid": "acido acidos acidificar acidifica acidez citrico malico",
    "week": (
        "semana semanas semanal mes meses mensual lunes martes miercoles jueves viernes sabado "
        "domingo ayer anoche octubre noviembre septiembre agosto reporte informe resumen total "
        "totales numeros"
    ),
    "count": "conte contar contamos conteo inventario recuento hay",
    "stock": "queda quedan tenemos existencias stock inventario disponible sobra",
    "par": "minimo minima par menos aviso avisame debajo siempre",
    "plan": "plan proximo proxima siguiente toca planear planificar cuando",
    "shop": "comprar compras lista pedir faltan falta super mandado",
    "morning": "manana temprano abrir",
    "sold": "vendi vendimos vendieron servi servimos servidos salieron copas tragos cocteles",
    "trial": "prueba probar ensayo experimento variante variantes version",
    "taste": (
        "cata catar nota notas puntua puntuar puntuacion califico calificar probe sabor amargor "
        "brillo aroma puntos"
    ),
    "safe": (
        "seguro peligro peligroso inflamable fuego flama llama guantes ventilacion ojos piel "
        "precaucion precauciones cuidado cuidados quema"
    ),
    "food": "alimentario alimenticio grado apto consumo comestible",
    "allergy": "alergeno alergenos alergia alergias alergico alergica gluten nueces celiaco",
    "remind": (
        "recuerdame recuerda recordar recordatorio recordatorios avisa avisame aviso alarma "
        "despues notificaciones"
    ),
    "who": "quien quienes",
    "log": "registro registrar registra historial anoto anotado apunto bitacora",
    "undo": (
        "deshacer deshaz borra borrar cancela cancelar quita atras equivoque error revertir anula anular"
    ),
    "correct": "perdon eran era corrige correccion quise decir no",
    "again": "mismo misma otra vez igual tambien mas repite otro",
    "team": "equipo personal gente integrantes miembros somos plantilla",
    "join": "invita invitar agrega anade alta unir nuevo",
    "leave": "salir salgo dejar dejo irme baja sacar saca renuncio fuera",
    "set": ("ajustes ajuste configuracion configurar cierre cerramos horario moneda zona unidades hora"),
    "lang": "idioma espanol ingles habla hablame frances lengua",
    "data": "datos privacidad guardas guardan sabes mio mi mis borra",
    "export": "exportar exporta descarga descargar respaldo copia excel csv archivo archivos todo",
    "import": "importar importa cargar carga subir sube archivo excel csv",
    "help": "ayuda ayudame puedes sabes funciona como explica instrucciones usar",
    "thanks": "gracias ok okay vale listo perfecto genial hola bien sale va chido adios buenas",
    "today": "hoy pendiente pendientes tareas toca",
    "canmake": "puedo podemos posible alcanza",
    "avail": "aqui con hay tengo",
}
