"""German, bounds, units and the names of figures. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

UNITS: Catalogue = {
    "at least {figure}": "mindestens {figure}",
    "at most {figure}": "höchstens {figure}",
    "on plan": "im Plan",
    "{amount} over": "{amount} über Plan",
    "{amount} under": "{amount} unter Plan",
    "{amount} per {unit}": "{amount} je {unit}",
    "per {unit}": "je {unit}",
    "area": "Fläche",
    "hour": "Stunde",
    "year": "Jahr",
    "{n} hours": {
        "one": "{n} Stunde",
        "other": "{n} Stunden",
    },
    "{n} days": {
        "one": "{n} Tag",
        "other": "{n} Tage",
    },
    "{n} weeks": {
        "one": "{n} Woche",
        "other": "{n} Wochen",
    },
    "{n} months": {
        "one": "{n} Monat",
        "other": "{n} Monate",
    },
    "{n} years": {
        "one": "{n} Jahr",
        "other": "{n} Jahre",
    },
    "{n} tons": {
        "one": "{n} US-Tonne",
        "other": "{n} US-Tonnen",
    },
    "{n} miles": {
        "one": "{n} Meile",
        "other": "{n} Meilen",
    },
    "{n} bags": {
        "one": "{n} Sack",
        "other": "{n} Säcke",
    },
    "{n} bars": {
        "one": "{n} Stab",
        "other": "{n} Stäbe",
    },
    "{n} blocks": {
        "one": "{n} Stein",
        "other": "{n} Steine",
    },
    "{n} boards": {
        "one": "{n} Brett",
        "other": "{n} Bretter",
    },
    "{n} board feet": {
        "one": "{n} Brettfuß",
        "other": "{n} Brettfuß",
    },
    "{n} bricks": {
        "one": "{n} Ziegel",
        "other": "{n} Ziegel",
    },
    "{n} courses": {
        "one": "{n} Schicht",
        "other": "{n} Schichten",
    },
    "{n} cuts": {
        "one": "{n} Schnitt",
        "other": "{n} Schnitte",
    },
    "{n} laps": {
        "one": "{n} Stoß",
        "other": "{n} Stöße",
    },
    "{n} loads": {
        "one": "{n} Fuhre",
        "other": "{n} Fuhren",
    },
    "{n} spaces": {
        "one": "{n} Feld",
        "other": "{n} Felder",
    },
    "{n} squares": {
        "one": "{n} Dachquadrat",
        "other": "{n} Dachquadrate",
    },
    "{n} studs": {
        "one": "{n} Ständer",
        "other": "{n} Ständer",
    },
    "{figure} of the whole build": "{figure} des ganzen Baus",
    "{figure} of {scope}": "{figure} von {scope}",
    "{figure} per {unit}": "{figure} je {unit}",
    "{figure} to date": "{figure} bis heute",
    "{unit} used of {line}": "{unit} verbraucht von {line}",
    "{unit} bought of {line}": "{unit} gekauft von {line}",
    "{unit} planned of {line}": "{unit} geplant von {line}",
    "spent": "ausgegeben",
    "brought in": "eingebracht",
    "elsewhere": "anderweitig",
    "job cost": "Baukosten",
    "in stock": "auf Lager",
    "reusable": "wiederverwendbar",
    "replacement cost": "Wiederbeschaffung",
    "saved": "gespart",
    "estimated": "geschätzt",
    "rework": "Nacharbeit",
    "own work": "Eigenleistung",
    "travel worth": "Wert der Fahrten",
    "deposits out": "offene Kautionen",
    "unpriced": "ohne Preis",
    "unvalued": "nicht bewertet",
    "hours": "Stunden",
    "planned": "geplant",
    "forecast": "Prognose",
    "contingency": "Reserve",
    "contingency taken": "verbrauchte Reserve",
    "contingency left": "übrige Reserve",
    "episodes": "Folgen",
    "lines": "Posten",
}
