"""French: where coefficients and cautions come from. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

SOURCES: Catalogue = {
    "National Precast Concrete Association, articles on cement burns, 2010 and 2016": (
        "National Precast Concrete Association, articles sur les brûlures au ciment, 2010 et 2016"
    ),
    "OSHA 29 CFR 1926.1153, as quoted by a university safety page": (
        "OSHA 29 CFR 1926.1153, citée par la page sécurité d’une université"
    ),
    "American Concrete Institute, definition of cold weather concreting": (
        "American Concrete Institute, définition du bétonnage par temps froid"
    ),
    "Unified Facilities Guide Specification 03301A, paragraph 3.5, whose days are options to choose from": (
        "Unified Facilities Guide Specification 03301A, paragraphe 3.5, dont les jours sont des options au choix"
    ),
    "International Residential Code R403.1.4, as quoted by a building code forum": (
        "International Residential Code R403.1.4, cité par un forum sur les règles de construction"
    ),
    "International Residential Code R403.1.1, an older edition, as quoted in course notes": (
        "International Residential Code R403.1.1, une édition plus ancienne, citée dans des notes de cours"
    ),
    "the 811 programme, as quoted by a regional gas association": (
        "le programme 811, cité par une association gazière régionale"
    ),
    "OSHA 29 CFR 1926.652(a), from memory": "OSHA 29 CFR 1926.652(a), de mémoire",
    "OSHA 29 CFR 1926 Subpart P Appendix B, Table B-1, as quoted by a copy on the web": (
        "OSHA 29 CFR 1926 Subpart P Appendix B, tableau B-1, cité d’après une copie en ligne"
    ),
    "40 CFR 745.83 and the EPA's answers on it": "40 CFR 745.83 et les réponses de l’EPA à ce sujet",
    "OSHA 29 CFR 1926.1101, as quoted by a university safety page; putty: common practice, no source": (
        "OSHA 29 CFR 1926.1101, citée par la page sécurité d’une université ; mastic : usage courant, sans source"
    ),
    "International Residential Code R308.4.2 and R308.4.3 (2015), as quoted by a copy on the web": (
        "International Residential Code R308.4.2 et R308.4.3 (2015), cité d’après une copie en ligne"
    ),
    ("EPA on CCA lumber, as quoted by a timber association and a forestry service; mask: common practice, no source"): (
        "EPA sur le bois CCA, citée par une association du bois et un service forestier ; masque : usage "
        "courant, sans source"
    ),
    "International Plumbing Code Table 704.1, as adopted by the city of Chicago": (
        "International Plumbing Code tableau 704.1, tel qu’adopté par la ville de Chicago"
    ),
    "common practice, no source": "usage courant, sans source",
    "ASTM A615/A615M Table 1, as quoted by a trade magazine": (
        "ASTM A615/A615M tableau 1, cité par une revue professionnelle"
    ),
    (
        "40 diameters: IRC Table R608.5.4(1) for Grade 40 bar in a residential concrete wall; the same table has "
        "60 for Grade 60. The drawing decides"
    ): (
        "40 diamètres : IRC tableau R608.5.4(1) pour une barre Grade 40 dans un mur en béton d’habitation ; le "
        "même tableau donne 60 pour Grade 60. Le plan décide"
    ),
    "Building Trades Pocketbook (ICS), Brickwork": "Building Trades Pocketbook (ICS), maçonnerie de brique",
    "Building Trades Pocketbook (ICS); Estimating in Building Construction, p. 123": (
        "Building Trades Pocketbook (ICS) ; Estimating in Building Construction, p. 123"
    ),
    (
        "EPA, Standard Volume-to-Weight Conversion Factors (2006), crushed stone, as quoted by a web page; the "
        "yard knows its own"
    ): (
        "EPA, Standard Volume-to-Weight Conversion Factors (2006), pierre concassée, cité par une page web ; le "
        "marchand connaît la sienne"
    ),
    "I. S. Griffith, Carpentry: a board foot is 12 x 12 x 1 in": (
        "I. S. Griffith, Carpentry : un pied-planche fait 12 x 12 x 1 in"
    ),
    "NCMA TEK 14, Estimating Concrete Masonry, 1969; half blocks as US Navy training course 14045, ch. 4": (
        "NCMA TEK 14, Estimating Concrete Masonry, 1969 ; demi-blocs selon le cours 14045 de l’US Navy, chap. 4"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, ch. 10, as quoted by lecture slides": (
        "S. Peterson et F. Dagostino, Estimating in Building Construction, chap. 10, cité par des diapositives de cours"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157": (
        "S. Peterson et F. Dagostino, Estimating in Building Construction, p. 157"
    ),
    ("S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157: two more for a corner of three 2x4"): (
        "S. Peterson et F. Dagostino, Estimating in Building Construction, p. 157 : deux de plus pour un angle "
        "de trois 2x4"
    ),
    "S. Peterson and F. Dagostino, Estimating in Building Construction, p. 181": (
        "S. Peterson et F. Dagostino, Estimating in Building Construction, p. 181"
    ),
    "US Navy training course 14044, ch. 2": "Cours 14044 de l’US Navy, chap. 2",
    "US Navy training course 14070, ch. 5": "Cours 14070 de l’US Navy, chap. 5",
    "a packing problem, solved by search": "un problème de rangement, résolu par recherche",
    "centre-line method of building estimating, as in university course notes CVE 367": (
        "méthode de la ligne d’axe du métré, comme dans les notes de cours universitaires CVE 367"
    ),
    (
        "common practice for common earth, no source; a handbook's examples have 15% for sand and gravel and 30% "
        "for dense clay (S. Peterson and F. Dagostino, Estimating in Building Construction, Ex. 9-2 and 9-3)"
    ): (
        "usage courant pour la terre ordinaire, sans source ; les exemples d’un manuel ont 15 % pour sable et "
        "gravier et 30 % pour l’argile dense (S. Peterson et F. Dagostino, Estimating in Building Construction, "
        "ex. 9-2 et 9-3)"
    ),
    "common practice, no source: in proportion to a 60 lb bag; the bag says what it yields": (
        "usage courant, sans source : en proportion d’un sac de 60 lb ; le sac dit ce qu’il rend"
    ),
    "common practice, no source: the cut of a usual circular saw blade": (
        "usage courant, sans source : le trait d’une lame de scie circulaire ordinaire"
    ),
    "common practice, no source; give 0 in where the sizes of the brick have their joint in them": (
        "usage courant, sans source ; donnez 0 in si les dimensions de la brique comprennent le joint"
    ),
    "course notes CVE 367, at second hand": "notes de cours CVE 367, de seconde main",
    "definition of coverage": "définition du pouvoir couvrant",
    "definition of slope": "définition de la pente",
    "from how-to pages, which differ by a tenth (others have 2/3 ft3 for 80 lb); the bag says what it yields": (
        "de pages de bricolage, qui diffèrent d’un dixième (d’autres ont 2/3 ft³ pour 80 lb) ; le sac dit ce qu’il rend"
    ),
    (
        "from memory, BIA Technical Note 10, an older edition: modular brick with a 3/8 in joint; a 1/2 in joint "
        "takes 10.3 ft3"
    ): (
        "de mémoire, BIA Technical Note 10, une édition plus ancienne : brique modulaire à joint de 3/8 in ; un "
        "joint de 1/2 in demande 10,3 ft³"
    ),
    (
        "from memory, CMHA/NCMA TEK 04-02A: 12 blocks of 8 x 8 x 16 from an 80 lb bag of ready mortar; 30 from "
        "70 lb of masonry cement with sand; the bag says what it lays"
    ): (
        "de mémoire, CMHA/NCMA TEK 04-02A : 12 blocs de 8 x 8 x 16 avec un sac de 80 lb de mortier prêt ; 30 "
        "avec 70 lb de ciment à maçonner et du sable ; le sac dit ce qu’il permet de poser"
    ),
    "geometry": "géométrie",
    "geometry: a wedge": "géométrie : un coin",
    "geometry; 1 in on 1 ft2 is 144/231 gal": "géométrie ; 1 in sur 1 ft² fait 144/231 gal",
    "nominal size of an 8 x 8 x 16 block, its 3/8 in joint in it (NCMA TEK 14, 1969)": (
        "dimension nominale d’un bloc 8 x 8 x 16, joint de 3/8 in compris (NCMA TEK 14, 1969)"
    ),
    "one-dimensional cutting stock; P. C. Gilmore and R. E. Gomory's column generation, from memory": (
        "découpe à une dimension ; génération de colonnes de P. C. Gilmore et R. E. Gomory, de mémoire"
    ),
    "prismoidal formula, Practices of Irrigation and On-farm Water Management, a course text": (
        "formule des trois niveaux, Practices of Irrigation and On-farm Water Management, un texte de cours"
    ),
    "read on how-to pages: paint on a smooth wall; 300 ft2 on bare or rough boards. The tin says its own": (
        "lu sur des pages de bricolage : peinture sur mur lisse ; 300 ft² sur planches nues ou rugueuses. Le pot "
        "donne le sien"
    ),
    "the middle of 75% to 95%, Take Care of Texas as quoted by the Brazos River Authority": (
        "le milieu de 75 % à 95 %, Take Care of Texas cité par la Brazos River Authority"
    ),
    "wall-area method, BIA Technical Note 10, as quoted by a web page": (
        "méthode de la surface de mur, BIA Technical Note 10, citée par une page web"
    ),
}
