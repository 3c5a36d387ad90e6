"""German: where coefficients and cautions come from. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

SOURCES: Catalogue = {
    "National Precast Concrete Association, articles on cement burns, 2010 and 2016": (
        "National Precast Concrete Association, Artikel über Zementverätzungen, 2010 und 2016"
    ),
    "OSHA 29 CFR 1926.1153, as quoted by a university safety page": (
        "OSHA 29 CFR 1926.1153, zitiert nach der Sicherheitsseite einer Universität"
    ),
    "American Concrete Institute, definition of cold weather concreting": (
        "American Concrete Institute, Definition des Betonierens bei Kälte"
    ),
    "Unified Facilities Guide Specification 03301A, paragraph 3.5, whose days are options to choose from": (
        "Unified Facilities Guide Specification 03301A, Absatz 3.5, deren Tage zur Auswahl stehen"
    ),
    "International Residential Code R403.1.4, as quoted by a building code forum": (
        "International Residential Code R403.1.4, zitiert nach einem Forum für Bauvorschriften"
    ),
    "International Residential Code R403.1.1, an older edition, as quoted in course notes": (
        "International Residential Code R403.1.1, eine ältere Fassung, zitiert nach einem Skript"
    ),
    "the 811 programme, as quoted by a regional gas association": (
        "das Programm 811, zitiert nach einem regionalen Gasverband"
    ),
    "OSHA 29 CFR 1926.652(a), from memory": "OSHA 29 CFR 1926.652(a), aus dem Gedächtnis",
    "OSHA 29 CFR 1926 Subpart P Appendix B, Table B-1, as quoted by a copy on the web": (
        "OSHA 29 CFR 1926 Subpart P Appendix B, Tabelle B-1, zitiert nach einer Abschrift im Netz"
    ),
    "40 CFR 745.83 and the EPA's answers on it": "40 CFR 745.83 und die Antworten der EPA dazu",
    "OSHA 29 CFR 1926.1101, as quoted by a university safety page; putty: common practice, no source": (
        "OSHA 29 CFR 1926.1101, zitiert nach der Sicherheitsseite einer Universität; Kitt: üblich, ohne Quelle"
    ),
    "International Residential Code R308.4.2 and R308.4.3 (2015), as quoted by a copy on the web": (
        "International Residential Code R308.4.2 und R308.4.3 (2015), zitiert nach einer Abschrift im Netz"
    ),
    ("EPA on CCA lumber, as quoted by a timber association and a forestry service; mask: common practice, no source"): (
        "EPA über CCA-Holz, zitiert nach einem Holzverband und einer Forstbehörde; Maske: üblich, ohne Quelle"
    ),
    "International Plumbing Code Table 704.1, as adopted by the city of Chicago": (
        "International Plumbing Code Tabelle 704.1, wie von der Stadt Chicago übernommen"
    ),
    "common practice, no source": "üblich, ohne Quelle",
    "ASTM A615/A615M Table 1, as quoted by a trade magazine": (
        "ASTM A615/A615M Tabelle 1, zitiert nach einer Fachzeitschrift"
    ),
    (
        "40 diameters: IRC Table R608.5.4(1) for Grade 40 bar in a residential concrete wall; the same table has "
        "60 for Grade 60. The drawing decides"
    ): (
        "40 Durchmesser: IRC Tabelle R608.5.4(1) für Stäbe Grade 40 in der Betonwand eines Wohnhauses; dieselbe "
        "Tabelle hat 60 für Grade 60. Es gilt der Plan"
    ),
    "Building Trades Pocketbook (ICS), Brickwork": "Building Trades Pocketbook (ICS), Mauerwerk",
    "Building Trades Pocketbook (ICS); Estimating in Building Construction, p. 123": (
        "Building Trades Pocketbook (ICS); Estimating in Building Construction, S. 123"
    ),
    (
        "EPA, Standard Volume-to-Weight Conversion Factors (2006), crushed stone, as quoted by a web page; the "
        "yard knows its own"
    ): (
        "EPA, Standard Volume-to-Weight Conversion Factors (2006), Schotter, zitiert nach einer Webseite; der "
        "Händler kennt seinen"
    ),
    "I. S. Griffith, Carpentry: a board foot is 12 x 12 x 1 in": (
        "I. S. Griffith, Carpentry: ein Brettfuß ist 12 x 12 x 1 in"
    ),
    "NCMA TEK 14, Estimating Concrete Masonry, 1969; half blocks as US Navy training course 14045, ch. 4": (
        "NCMA TEK 14, Estimating Concrete Masonry, 1969; halbe Steine nach Lehrgang 14045 der US Navy, Kap. 4"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, ch. 10, as quoted by lecture slides": (
        "S. Peterson und F. Dagostino, Estimating in Building Construction, Kap. 10, zitiert nach Vorlesungsfolien"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157": (
        "S. Peterson und F. Dagostino, Estimating in Building Construction, S. 157"
    ),
    ("S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157: two more for a corner of three 2x4"): (
        "S. Peterson und F. Dagostino, Estimating in Building Construction, S. 157: zwei mehr für eine Ecke aus "
        "drei 2x4"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, p. 181": (
        "S. Peterson und F. Dagostino, Estimating in Building Construction, S. 181"
    ),
    "US Navy training course 14044, ch. 2": "Lehrgang 14044 der US Navy, Kap. 2",
    "US Navy training course 14070, ch. 5": "Lehrgang 14070 der US Navy, Kap. 5",
    "a packing problem, solved by search": "ein Packungsproblem, durch Suche gelöst",
    "centre-line method of building estimating, as in university course notes CVE 367": (
        "Mittellinienverfahren der Kostenermittlung, wie im Universitätsskript CVE 367"
    ),
    (
        "common practice for common earth, no source; a handbook's examples have 15% for sand and gravel and 30% "
        "for dense clay (S. Peterson and F. Dagostino, Estimating in Building Construction, Ex. 9-2 and 9-3)"
    ): (
        "üblich für gewöhnliche Erde, ohne Quelle; Beispiele eines Handbuchs haben 15 % für Sand und Kies und 30 "
        "% für festen Ton (S. Peterson und F. Dagostino, Estimating in Building Construction, Beisp. 9-2 und 9-3)"
    ),
    "common practice, no source: in proportion to a 60 lb bag; the bag says what it yields": (
        "üblich, ohne Quelle: im Verhältnis zu einem Sack von 60 lb; auf dem Sack steht, was er ergibt"
    ),
    "common practice, no source: the cut of a usual circular saw blade": (
        "üblich, ohne Quelle: der Schnitt eines gewöhnlichen Kreissägeblatts"
    ),
    "common practice, no source; give 0 in where the sizes of the brick have their joint in them": (
        "üblich, ohne Quelle; gib 0 in an, wenn die Maße des Ziegels die Fuge schon enthalten"
    ),
    "course notes CVE 367, at second hand": "Skript CVE 367, aus zweiter Hand",
    "definition of coverage": "Definition der Ergiebigkeit",
    "definition of slope": "Definition des Gefälles",
    "from how-to pages, which differ by a tenth (others have 2/3 ft3 for 80 lb); the bag says what it yields": (
        "von Anleitungsseiten, die um ein Zehntel auseinanderliegen (andere haben 2/3 ft³ für 80 lb); auf dem "
        "Sack steht, was er ergibt"
    ),
    (
        "from memory, BIA Technical Note 10, an older edition: modular brick with a 3/8 in joint; a 1/2 in joint "
        "takes 10.3 ft3"
    ): (
        "aus dem Gedächtnis, BIA Technical Note 10, eine ältere Fassung: Modulziegel mit einer Fuge von 3/8 in; "
        "eine Fuge von 1/2 in braucht 10,3 ft³"
    ),
    (
        "from memory, CMHA/NCMA TEK 04-02A: 12 blocks of 8 x 8 x 16 from an 80 lb bag of ready mortar; 30 from "
        "70 lb of masonry cement with sand; the bag says what it lays"
    ): (
        "aus dem Gedächtnis, CMHA/NCMA TEK 04-02A: 12 Steine 8 x 8 x 16 aus einem Sack Fertigmörtel von 80 lb; "
        "30 aus 70 lb Mauerzement mit Sand; auf dem Sack steht, wie weit er reicht"
    ),
    "geometry": "Geometrie",
    "geometry: a wedge": "Geometrie: ein Keil",
    "geometry; 1 in on 1 ft2 is 144/231 gal": "Geometrie; 1 in auf 1 ft² sind 144/231 gal",
    "nominal size of an 8 x 8 x 16 block, its 3/8 in joint in it (NCMA TEK 14, 1969)": (
        "Nennmaß eines Steins 8 x 8 x 16, mit seiner Fuge von 3/8 in (NCMA TEK 14, 1969)"
    ),
    "one-dimensional cutting stock; P. C. Gilmore and R. E. Gomory's column generation, from memory": (
        "eindimensionaler Zuschnitt; Spaltengenerierung nach P. C. Gilmore und R. E. Gomory, aus dem Gedächtnis"
    ),
    "prismoidal formula, Practices of Irrigation and On-farm Water Management, a course text": (
        "Prismatoidformel, Practices of Irrigation and On-farm Water Management, ein Kurstext"
    ),
    "read on how-to pages: paint on a smooth wall; 300 ft2 on bare or rough boards. The tin says its own": (
        "auf Anleitungsseiten gelesen: Farbe auf glatter Wand; 300 ft² auf rohen oder rauen Brettern. Auf der "
        "Dose steht der eigene Wert"
    ),
    "the middle of 75% to 95%, Take Care of Texas as quoted by the Brazos River Authority": (
        "die Mitte von 75 % bis 95 %, Take Care of Texas, zitiert nach der Brazos River Authority"
    ),
    "wall-area method, BIA Technical Note 10, as quoted by a web page": (
        "Wandflächenverfahren, BIA Technical Note 10, zitiert nach einer Webseite"
    ),
}
