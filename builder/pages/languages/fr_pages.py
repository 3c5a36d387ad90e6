"""French: what stands round every page, home, episodes, feed, and what yours would cost. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

PAGES: Catalogue = {
    "Home": "Accueil",
    "Ledger": "Comptes",
    "Plan": "Plan",
    "Sources": "Provenances",
    "Yours": "Le vôtre",
    "Workings": "Calculs",
    "Figures as data": "Chiffres en données",
    "Ledger as a table": "Comptes en tableau",
    "Feed": "Flux",
    "Pages": "Pages",
    "Skip to the page": "Aller au contenu",
    (
        "This is an account of how one person built it, not a design and not advice: check your local code and "
        "permits, and ask a licensed professional before you dig, pour, wire or climb."
    ): (
        "Ceci raconte comment une personne l’a construit ; ce n’est ni un projet ni un conseil. Vérifiez les "
        "règles et permis de chez vous et demandez à un professionnel agréé avant de creuser, couler, câbler ou "
        "grimper."
    ),
    "Prices were paid on {day}, in {currency}, with tax and delivery.": (
        "Les prix ont été payés le {day}, en {currency}, taxes et livraison comprises."
    ),
    "Prices were paid from {first} to {last}, in {currency}, with tax and delivery.": (
        "Les prix ont été payés du {first} au {last}, en {currency}, taxes et livraison comprises."
    ),
    "Not here": "Pas ici",
    "There is no page at this address": "Il n’y a pas de page à cette adresse",
    "There is no page at this address. It may have been renamed.": (
        "Il n’y a pas de page à cette adresse. Elle a peut-être changé de nom."
    ),
    "To the first page": "Vers la première page",
    ":": " :",
    ";": " ;",
    "{name}: {value}": "{name} : {value}",
    "{term}: what it is": "{term} : ce que c’est",
    "Newest episode": "Dernier épisode",
    "No episode has been written yet.": "Aucun épisode n’est encore écrit.",
    "Phases": "Phases",
    "The bubble slides to the side that is over.": (
        "Quand une phase dépasse le plan, la bulle glisse à droite ; en dessous, à gauche."
    ),
    "Costs are job cost: what is still on the shelf or will be used again is not in them.": (
        "Les montants sont le coût du chantier : ce qui est encore en stock ou resservira n’y est pas."
    ),
    "{amount} of {plan}": "{amount} sur {plan}",
    "Cost over time": "Le coût au fil du temps",
    "Each step is an episode.": "Chaque marche est un épisode.",
    "Each step is an episode. The ring is where the build is forecast to end.": (
        "Chaque marche est un épisode. L’anneau marque la fin du chantier selon la projection."
    ),
    "All episodes": "Tous les épisodes",
    "What is not in this total": "Ce qui n’est pas dans ce total",
    "running total {amount}": "total cumulé {amount}",
    "spent so far": "dépensés à ce jour",
    "spent so far, {job_cost} of it used up": "dépensés à ce jour, dont {job_cost} consommés",
    "How far": "Avancement",
    "{done} of {n} phases done": {
        "one": "{done} phase finie sur {n}",
        "many": "{done} phases finies sur {n}",
        "other": "{done} phases finies sur {n}",
    },
    "now: {phases}": "en cours : {phases}",
    "Promised for": "Promis pour le",
    "Own work": "Travail personnel",
    "Episode {number}": "Épisode {number}",
    "Episode {number}: {title}": "Épisode {number} : {title}",
    "episode {number}": "épisode {number}",
    "Episode": "Épisode",
    "Episodes": "Épisodes",
    "This episode in figures": "Cet épisode en chiffres",
    "The video": "La vidéo",
    "Watch it on its own site": "La regarder sur son site",
    "What it cost": "Ce que ça a coûté",
    "This episode cost nothing.": "Cet épisode n’a rien coûté.",
    "Running total": "Total cumulé",
    "Snags": "Réserves",
    "Lessons": "Leçons",
    "Episodes before and after": "Épisodes avant et après",
    "Before": "Avant",
    "Next": "Après",
    "What this episode took, in {currency}, with tax and delivery": (
        "Ce que cet épisode a demandé, en {currency}, taxes et livraison comprises"
    ),
    "This episode took": "Cet épisode a demandé",
    "This episode": "Cet épisode",
    "{n} prices are not known": {
        "one": "{n} prix n’est pas connu",
        "many": "{n} de prix ne sont pas connus",
        "other": "{n} prix ne sont pas connus",
    },
    "Hours": "Heures",
    "{n} people": {"one": "{n} personne", "many": "{n} de personnes", "other": "{n} personnes"},
    "none written down": "aucune notée",
    "Helpers": "Aides",
    "Weather": "Météo",
    "{part} done": "{part} faits",
    "done": "finie",
    "Spent before": "Dépensé avant",
    "Spent so far": "Dépensé à ce jour",
    "Paid and brought in, {in_all}, are as much as job cost, in stock, reusable and elsewhere together.": (
        "Payé et apporté, {in_all} en tout, font autant que coût du chantier, en stock, réutilisable et ailleurs "
        "réunis."
    ),
    "done in episode {number}": "levée dans l’épisode {number}",
    "from episode {number}": "de l’épisode {number}",
    "I said {said} for “{name}”; the ledger has {ledger}. {why}": (
        "J’ai annoncé {said} pour « {name} » ; les comptes disent {ledger}. {why}"
    ),
    "{own} this episode, {running} so far.": "{own} pour cet épisode, {running} à ce jour.",
    "An account of how one person built it, not advice.": (
        "Le récit de comment une personne l’a construit, pas un conseil."
    ),
    "What yours would cost": "Ce que le vôtre coûterait",
    "The same build at your prices, with your machines and your luck": (
        "Le même chantier à vos prix, avec vos machines et votre chance"
    ),
    "Three answers": "Trois réponses",
    "As I did it": "Comme je l’ai fait",
    "what this build has taken so far": "ce que ce chantier a demandé à ce jour",
    "With half the luck": "Avec deux fois moins de chance",
    "each thing I found, at half the way to its price new": "chaque trouvaille à mi-chemin de son prix neuf",
    "Everything bought new and hired": "Tout acheté neuf ou loué",
    "starting from nothing, selling no leftovers": "en partant de rien, sans rien revendre des restes",
    "{n} lines have no price: only what is known of them is in these figures.": {
        "one": "{n} ligne n’a pas de prix : seul ce qu’on en sait est dans ces chiffres.",
        "many": "{n} de lignes n’ont pas de prix : seul ce qu’on en sait est dans ces chiffres.",
        "other": "{n} lignes n’ont pas de prix : seul ce qu’on en sait est dans ces chiffres.",
    },
    "{n} lines could not be valued: they stand at what they cost here.": {
        "one": "{n} ligne n’a pas pu être évaluée : elle compte pour ce qu’elle a coûté ici.",
        "many": "{n} de lignes n’ont pas pu être évaluées : elles comptent pour ce qu’elles ont coûté ici.",
        "other": "{n} lignes n’ont pas pu être évaluées : elles comptent pour ce qu’elles ont coûté ici.",
    },
    "Your choices": "Vos choix",
    "Machines you own or can borrow": "Machines que vous avez ou qu’on vous prête",
    "What you can find instead of buying it new": "Ce que vous pouvez trouver au lieu de l’acheter neuf",
    "{source}: {amount} more when it has to be bought": "{source} : {amount} de plus s’il faut l’acheter",
    "{source}: {amount} less when it is bought new": "{source} : {amount} de moins s’il faut l’acheter neuf",
    "{source}: nobody knows how much more when it has to be bought": (
        "{source} : personne ne sait combien de plus s’il faut l’acheter"
    ),
    "all of it": "la totalité",
    "half of it": "la moitié",
    "none of it": "rien",
    "What serves again": "Ce qui resservira",
    "I will use it again, so {amount} of it is not this build's": (
        "Je le réutiliserai, donc {amount} n’appartiennent pas à ce chantier"
    ),
    "Prices, size and your hours": "Prix, taille et vos heures",
    "Prices where you are": "Les prix chez vous",
    "Size, for the materials": "Taille, pour les matériaux",
    "Your hour is worth (for {hours})": "Votre heure vaut (pour {hours})",
    "Yours would cost": "Le vôtre coûterait",
    "The address of this page keeps your choices: copy it to share the answer.": (
        "L’adresse de cette page garde vos choix : copiez-la pour partager la réponse."
    ),
    "With scripts on, this page reprices the lines with your own choices.": (
        "Si les scripts sont permis, cette page recalcule les lignes selon vos choix."
    ),
    "What such a figure cannot know": "Ce qu’un tel chiffre ne peut pas savoir",
    (
        "It cannot know your ground, your local code, your prices or your luck. It reprices the lines of this "
        "build; it does not design yours. Sizes, depths and wiring are for local code and licensed people to say."
    ): (
        "Il ne connaît ni votre sol, ni vos règles locales, ni vos prix, ni votre chance. Il recalcule les "
        "lignes de ce chantier ; il ne conçoit pas le vôtre. Dimensions, profondeurs et câblage relèvent des "
        "règles locales et de gens agréés."
    ),
    "Every phase is done: the whole build on one page": (
        "Toutes les phases sont finies : tout le chantier sur une page"
    ),
    "What it cost in the end, and what was learnt": "Ce que ça a coûté au final, et ce qu’on en a appris",
    "spent from {first} to {last}": "dépensés du {first} au {last}",
    "Unpaid hours": "Heures non payées",
    "What I would do otherwise": "Ce que je ferais autrement",
}
