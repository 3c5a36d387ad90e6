"""Other words for where a thing came from: what people write in place of the format's own, in four languages.

They are not read, only recognised, so that the message can say what to write.
"""

from __future__ import annotations

from collections.abc import Mapping

from builder.journal.records.item import Source

_WORDS = {
    Source.BOUGHT: """new, purchased, shop, gekauft, neu, Kauf, acheté, achat, neuf, comprado, nuevo, compra""",
    Source.SECONDHAND: """used, second-hand, second hand, preowned, gebraucht, aus zweiter Hand, occasion,
        d'occasion, de seconde main, usado, segunda mano, de segunda mano""",
    Source.SALVAGED: """reclaimed, recycled, scrap, found, free, gefunden, geborgen, ausgebaut, Abbruch, Sperrmüll,
        trouvé, récupéré, récup, encontrado, recuperado, rescatado""",
    Source.GIFT: """given, present, donated, geschenkt, Geschenk, cadeau, donné, offert, don, regalo, regalado""",
    Source.STOCK: """leftover, leftovers, Vorrat, Lager, Rest, Reste, reste, restes, sobrante, sobras, existencias""",
    Source.OWNED: """own, mine, eigen, eigenes, vorhanden, à moi, personnel, propio, mío""",
    Source.BORROWED: """lent, loan, geliehen, ausgeliehen, geborgt, emprunté, prêté, prestado""",
    Source.HIRED: """rented, rental, hire, gemietet, Miete, loué, location, alquilado, alquiler""",
    Source.UNPAID: """volunteer, unbezahlt, ehrenamtlich, bénévole, non payé, sin pagar, voluntario""",
    Source.PAID: """bezahlt, payé, pagado""",
    Source.RETURNED: """return, refunded, zurückgegeben, retour, rendu, retourné, devuelto""",
    Source.SOLD: """verkauft, vendu, vendido""",
    Source.SPOILED: """broken, wasted, verdorben, kaputt, gâché, abîmé, estropeado, roto""",
}

ALSO_SOURCES: Mapping[str, str] = {
    **{source.value: source.value for source in Source},
    **{" ".join(word.split()): source.value for source, words in _WORDS.items() for word in words.split(",")},
}
