"""Spanish: where coefficients and cautions come from. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

SOURCES: Catalogue = {
    "National Precast Concrete Association, articles on cement burns, 2010 and 2016": (
        "National Precast Concrete Association, artículos sobre quemaduras de cemento, 2010 y 2016"
    ),
    "OSHA 29 CFR 1926.1153, as quoted by a university safety page": (
        "OSHA 29 CFR 1926.1153, citada en la página de seguridad de una universidad"
    ),
    "American Concrete Institute, definition of cold weather concreting": (
        "American Concrete Institute, definición de hormigonado en tiempo frío"
    ),
    "Unified Facilities Guide Specification 03301A, paragraph 3.5, whose days are options to choose from": (
        "Unified Facilities Guide Specification 03301A, apartado 3.5, cuyos días son opciones a elegir"
    ),
    "International Residential Code R403.1.4, as quoted by a building code forum": (
        "International Residential Code R403.1.4, citado en un foro sobre normas de construcción"
    ),
    "International Residential Code R403.1.1, an older edition, as quoted in course notes": (
        "International Residential Code R403.1.1, una edición anterior, citada en unos apuntes"
    ),
    "the 811 programme, as quoted by a regional gas association": (
        "el programa 811, citado por una asociación regional de gas"
    ),
    "OSHA 29 CFR 1926.652(a), from memory": "OSHA 29 CFR 1926.652(a), de memoria",
    "OSHA 29 CFR 1926 Subpart P Appendix B, Table B-1, as quoted by a copy on the web": (
        "OSHA 29 CFR 1926 Subpart P Appendix B, tabla B-1, citada de una copia en la red"
    ),
    "40 CFR 745.83 and the EPA's answers on it": "40 CFR 745.83 y las respuestas de la EPA al respecto",
    "OSHA 29 CFR 1926.1101, as quoted by a university safety page; putty: common practice, no source": (
        "OSHA 29 CFR 1926.1101, citada en la página de seguridad de una universidad; masilla: práctica habitual, "
        "sin fuente"
    ),
    "International Residential Code R308.4.2 and R308.4.3 (2015), as quoted by a copy on the web": (
        "International Residential Code R308.4.2 y R308.4.3 (2015), citado de una copia en la red"
    ),
    ("EPA on CCA lumber, as quoted by a timber association and a forestry service; mask: common practice, no source"): (
        "EPA sobre la madera CCA, citada por una asociación maderera y un servicio forestal; mascarilla: "
        "práctica habitual, sin fuente"
    ),
    "International Plumbing Code Table 704.1, as adopted by the city of Chicago": (
        "International Plumbing Code tabla 704.1, adoptada por la ciudad de Chicago"
    ),
    "common practice, no source": "práctica habitual, sin fuente",
    "ASTM A615/A615M Table 1, as quoted by a trade magazine": (
        "ASTM A615/A615M tabla 1, citada en una revista del oficio"
    ),
    (
        "40 diameters: IRC Table R608.5.4(1) for Grade 40 bar in a residential concrete wall; the same table has "
        "60 for Grade 60. The drawing decides"
    ): (
        "40 diámetros: IRC tabla R608.5.4(1) para barra Grade 40 en un muro de hormigón de vivienda; la misma "
        "tabla da 60 para Grade 60. Decide el plano"
    ),
    "Building Trades Pocketbook (ICS), Brickwork": "Building Trades Pocketbook (ICS), fábrica de ladrillo",
    "Building Trades Pocketbook (ICS); Estimating in Building Construction, p. 123": (
        "Building Trades Pocketbook (ICS); Estimating in Building Construction, pág. 123"
    ),
    (
        "EPA, Standard Volume-to-Weight Conversion Factors (2006), crushed stone, as quoted by a web page; the "
        "yard knows its own"
    ): (
        "EPA, Standard Volume-to-Weight Conversion Factors (2006), piedra machacada, citado en una página web; "
        "el almacén conoce la suya"
    ),
    "I. S. Griffith, Carpentry: a board foot is 12 x 12 x 1 in": (
        "I. S. Griffith, Carpentry: un pie tablar es 12 x 12 x 1 in"
    ),
    "NCMA TEK 14, Estimating Concrete Masonry, 1969; half blocks as US Navy training course 14045, ch. 4": (
        "NCMA TEK 14, Estimating Concrete Masonry, 1969; medios bloques según el curso 14045 de la US Navy, cap. 4"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, ch. 10, as quoted by lecture slides": (
        "S. Peterson y F. Dagostino, Estimating in Building Construction, cap. 10, citado en diapositivas de clase"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157": (
        "S. Peterson y F. Dagostino, Estimating in Building Construction, pág. 157"
    ),
    ("S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157: two more for a corner of three 2x4"): (
        "S. Peterson y F. Dagostino, Estimating in Building Construction, pág. 157: dos más por una esquina de tres 2x4"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, p. 181": (
        "S. Peterson y F. Dagostino, Estimating in Building Construction, pág. 181"
    ),
    "US Navy training course 14044, ch. 2": "Curso 14044 de la US Navy, cap. 2",
    "US Navy training course 14070, ch. 5": "Curso 14070 de la US Navy, cap. 5",
    "a packing problem, solved by search": "un problema de empaquetado, resuelto por búsqueda",
    "centre-line method of building estimating, as in university course notes CVE 367": (
        "método de la línea central en mediciones, como en los apuntes universitarios CVE 367"
    ),
    (
        "common practice for common earth, no source; a handbook's examples have 15% for sand and gravel and 30% "
        "for dense clay (S. Peterson and F. Dagostino, Estimating in Building Construction, Ex. 9-2 and 9-3)"
    ): (
        "práctica habitual para tierra común, sin fuente; los ejemplos de un manual tienen 15 % para arena y "
        "grava y 30 % para arcilla densa (S. Peterson y F. Dagostino, Estimating in Building Construction, ej. "
        "9-2 y 9-3)"
    ),
    "common practice, no source: in proportion to a 60 lb bag; the bag says what it yields": (
        "práctica habitual, sin fuente: en proporción a un saco de 60 lb; el saco dice lo que rinde"
    ),
    "common practice, no source: the cut of a usual circular saw blade": (
        "práctica habitual, sin fuente: el corte de un disco de sierra circular corriente"
    ),
    "common practice, no source; give 0 in where the sizes of the brick have their joint in them": (
        "práctica habitual, sin fuente; pon 0 in si las medidas del ladrillo ya llevan la junta"
    ),
    "course notes CVE 367, at second hand": "apuntes CVE 367, de segunda mano",
    "definition of coverage": "definición de rendimiento",
    "definition of slope": "definición de pendiente",
    "from how-to pages, which differ by a tenth (others have 2/3 ft3 for 80 lb); the bag says what it yields": (
        "de páginas de bricolaje, que difieren en un décimo (otras dan 2/3 ft³ para 80 lb); el saco dice lo que rinde"
    ),
    (
        "from memory, BIA Technical Note 10, an older edition: modular brick with a 3/8 in joint; a 1/2 in joint "
        "takes 10.3 ft3"
    ): (
        "de memoria, BIA Technical Note 10, una edición anterior: ladrillo modular con junta de 3/8 in; una "
        "junta de 1/2 in lleva 10,3 ft³"
    ),
    (
        "from memory, CMHA/NCMA TEK 04-02A: 12 blocks of 8 x 8 x 16 from an 80 lb bag of ready mortar; 30 from "
        "70 lb of masonry cement with sand; the bag says what it lays"
    ): (
        "de memoria, CMHA/NCMA TEK 04-02A: 12 bloques de 8 x 8 x 16 con un saco de 80 lb de mortero preparado; "
        "30 con 70 lb de cemento de albañilería y arena; el saco dice cuántos coloca"
    ),
    "geometry": "geometría",
    "geometry: a wedge": "geometría: una cuña",
    "geometry; 1 in on 1 ft2 is 144/231 gal": "geometría; 1 in sobre 1 ft² son 144/231 gal",
    "nominal size of an 8 x 8 x 16 block, its 3/8 in joint in it (NCMA TEK 14, 1969)": (
        "medida nominal de un bloque 8 x 8 x 16, con su junta de 3/8 in (NCMA TEK 14, 1969)"
    ),
    "one-dimensional cutting stock; P. C. Gilmore and R. E. Gomory's column generation, from memory": (
        "corte unidimensional; generación de columnas de P. C. Gilmore y R. E. Gomory, de memoria"
    ),
    "prismoidal formula, Practices of Irrigation and On-farm Water Management, a course text": (
        "fórmula del prismatoide, Practices of Irrigation and On-farm Water Management, un texto de curso"
    ),
    "read on how-to pages: paint on a smooth wall; 300 ft2 on bare or rough boards. The tin says its own": (
        "leído en páginas de bricolaje: pintura en pared lisa; 300 ft² en tablas desnudas o ásperas. La lata "
        "dice el suyo"
    ),
    "the middle of 75% to 95%, Take Care of Texas as quoted by the Brazos River Authority": (
        "la mitad entre 75 % y 95 %, Take Care of Texas citado por la Brazos River Authority"
    ),
    "wall-area method, BIA Technical Note 10, as quoted by a web page": (
        "método de la superficie de muro, BIA Technical Note 10, citado en una página web"
    ),
}
