#include "sign_roles.h"

#include <stdlib.h>
#include <string.h>

#include "image.h"
#include "memory.h"
#include "sound.h"

/* Words of one role, separated by blanks. */
struct role_words {
    enum role role;
    const char *words;
};

/* Common practice, no source; wordings that people text, apostrophes gone. */
static const struct role_words english[] = {
    {ROLE_LITTLE,
     "i im ive id ill me my mine he hes him his she shes her they theyre them their we us our you "
     "your youre it its this that these those there a an the is am are was were be been being has "
     "have had having do does did and of in on at to for with from by across as so very just too "
     "also please some any all who theres whats"},
    {ROLE_LIGHT,
     "even really rly super pretty extremely kinda sorta kind sort little bit lot much more enough "
     "good full fully properly right well much now again anymore longer today tonight still "
     "suddenly constantly seem seems seemed seeming able feel feels feeling felt like deep bad "
     "badly worse dad mom mum mother father husband wife grandma grandpa grandmother grandfather "
     "nana papa granny son daughter baby kid child boy girl uncle aunt sister brother friend man "
     "woman guy lady guest someone somebody person patient hubby partner roommate both"},
    {ROLE_VERB,
     "get gets getting got gotten keep keeps keeping start starts started starting go goes going "
     "gone become becoming turn turns turning turned look looks looking catch take taking"},
    {ROLE_NEGATION,
     "no not never without dont doesnt didnt isnt arent wasnt werent aint havent hasnt hadnt nor "
     "neither none denies deny"},
    {ROLE_UNABLE,
     "cant couldnt wont wouldnt unable hardly barely scarcely dont doesnt didnt isnt arent wasnt "
     "aint not no never havent hasnt"},
    {ROLE_THROUGH,
     "a an any the of have has had having feel feels felt feeling get gets getting got been be "
     "being is are am was were really at all much more kind type sort sign signs symptom symptoms "
     "currently experiencing experience show showing complain complaining complaints notice "
     "noticed see seeing with in or nor like such suffering from actual bad severe serious new "
     "other think thought mean saying said i im ive he hes she shes they theyre we it its to this "
     "that so very too today"},
    {ROLE_PERSON,
     "i im ive my he hes his she shes her they theyre their we our dad mom mum mother father "
     "husband wife grandma grandpa it its theres"},
    {ROLE_BUT, "but however although though except"},
    {ROLE_OR, "or nor"},
    {ROLE_PARTICLE, "out up off down over"},
    {ROLE_HUMAN,
     "i im ive he hes his him she shes her they theyre them we dad mom mum mommy daddy mother "
     "father "
     "husband wife grandma grandpa gramma grammy grandmother grandfather nana papa granny son "
     "daughter baby kid child boy girl uncle aunt sister brother friend man woman guy lady guest "
     "someone somebody person patient hubby partner roommate"},
    {ROLE_STATEMENT, "and so because cause plus then"},
    {ROLE_ASKS, "how hows what whats which where wheres can could do does will should"},
    {ROLE_PAST_UNIT, "year years yr yrs winter winters summer summers season seasons month months "
                     "decade decades christmas"},
    {ROLE_PAST_MARK, "ago back earlier"},
    {ROLE_PAST_NEXT, "last previous"},
    {ROLE_YEAR_AFTER, "in of back around"},
    {ROLE_NOW, "now again today tonight still like than just currently morning keeps"},
};

/*
 * Common practice, no source; to be reviewed by native speakers. "se" is not negated through,
 * because "no se me duele el pecho" is "I don't know, my chest hurts".
 */
static const struct role_words spanish[] = {
    {ROLE_LITTLE,
     "yo tu usted ustedes el ella ellos ellas ello nosotros nosotras me te se nos os le les lo la "
     "los las mi mis tus su sus nuestro nuestra un una unos unas de del al a en con por para pa y "
     "e que es esta estoy estan estamos estas estar soy son somos ser era eran fue fui fueron "
     "estaba estaban estuvo esto eso este ese esa estos esas aqui ahi alla muy mas tan ya tambien "
     "ha he han hemos habia haber hay haya tengo tiene tienen tenemos tener tenia tuvo porfa favor "
     "pues bueno oye oiga ay dios va van voy"},
    {ROLE_LIGHT,
     "bien casi apenas ahora ahorita hoy anoche ayer rato siento siente sienten sentir empieza "
     "empezo comienza comenzo sigue siguen mucho mucha muchos muchas poco poca poquito todo toda "
     "todos todas aun todavia otra otro vez cuando cual asi solo nomas bastante demasiado super re "
     "medio repente subito feo fuerte fuertisimo mal pone ponen puso pusieron ve ven ver quedo "
     "queda quedando hace hizo desde horas minutos dias hola ayuda ayudenme ayudeme papa mama papi "
     "mami papito mamita ma jefe jefa jefito jefita viejo vieja viejito viejita esposo esposa "
     "marido mujer senor senora abuelo abuela abuelito abuelita tata hijo hija hijito hijita nino "
     "nina bebe hermano hermana tio tia primo prima suegro suegra cunado cunada nieto nieta yerno "
     "nuera amigo amiga novio novia pareja companero companera vecino vecina huesped paciente "
     "muchacho muchacha chico chica persona alguien puedo puede pueden podemos podia podian "
     "poder logro logra logran logramos consigo consigue consiguen alcanzo alcanza quiere quieren"},
    {ROLE_NEGATION, "no nunca jamas sin tampoco ni ningun ninguna niega"},
    {ROLE_UNABLE, "no apenas casi nunca sin ni tampoco"},
    {ROLE_THROUGH,
     "me te le nos les tengo tiene tienen tener tenia tenido siento siente sienten sentir sentido "
     "hay habia ha he han un una unos unas el la los las de en a ningun ninguna ninguno nada mas "
     "mucho mucha muchos tipo clase sintoma sintomas senal senales creo que es esta estoy estan "
     "ya hoy mi su sus tanto tanta"},
    {ROLE_PERSON,
     "mi mis yo ella el esposo esposa marido mujer papa mama abuelo abuela hijo hija nino nina"},
    {ROLE_BUT, "pero sino aunque"},
    {ROLE_OR, "o ni u"},
    {ROLE_HUMAN,
     "yo el ella ellos ellas nosotros usted papa mama papi mami papito mamita jefe jefa jefito "
     "jefita viejo vieja viejito viejita esposo esposa marido mujer senor senora abuelo abuela "
     "abuelito abuelita tata hijo hija hijito hijita nino nina bebe hermano hermana tio tia primo "
     "prima suegro suegra cunado cunada nieto nieta yerno nuera amigo amiga novio novia pareja "
     "companero companera vecino vecina huesped paciente muchacho muchacha chico chica persona "
     "alguien"},
    {ROLE_ARTICLE, "el"},
    {ROLE_STATEMENT, "y e porque entonces pues"},
    {ROLE_ASKS, "como cual cuales donde cuanto cuanta cuantos cuantas que"},
    {ROLE_PAST_UNIT, "ano anos mes meses invierno inviernos verano veranos temporada navidad"},
    {ROLE_PAST_MARK, "hace pasado pasada atras"},
    {ROLE_YEAR_AFTER, "en del de"},
    {ROLE_LASTS, "hace"},
    {ROLE_HAPPENED,
     "tuvo tuve tuvimos tuvieron dio dieron sufrio sufri paso pasaron hizo hicieron fue "
     "fueron estuvo cayo cai quebro rompio opero operaron desmayo desmaye infarto "
     "convulsiono sangro dolio ahogo atraganto perdio"},
    {ROLE_NOW, "ahora ahorita hoy otra todavia sigue aun cual recien acaba"},
};

/* Two words that people also write as one; both become `one`. */
struct role_pair {
    const char *first, *second, *one;
};

static const struct role_pair english_pairs[] = {
    {"can", "not", "cant"},    {"can", "no", "cant"},       {"could", "not", "couldnt"},
    {"will", "not", "wont"},   {"would", "not", "wouldnt"}, {"do", "not", "dont"},
    {"does", "not", "doesnt"}, {"did", "not", "didnt"},     {"is", "not", "isnt"},
    {"are", "not", "arent"},   {"was", "not", "wasnt"},     {"has", "not", "hasnt"},
    {"have", "not", "havent"}, {"not", "able", "unable"},   {"i", "am", "im"},
    {"there", "is", "theres"}, {"he", "is", "hes"},         {"she", "is", "shes"},
    {"they", "are", "theyre"}, {"can", "t", "cant"},        {"won", "t", "wont"},
    {"don", "t", "dont"},      {"doesn", "t", "doesnt"},    {"didn", "t", "didnt"},
    {"isn", "t", "isnt"},      {"cannot", NULL, "cant"},
};

/* "como" is hardly ever "I eat", and has the stem of "comida", which people choke on. */
static const struct role_pair spanish_pairs[] = {
    {"como", NULL, "cual"},
};

struct pairs {
    const struct role_pair *list;
    size_t count;
};

static const struct pairs pairs_of[LANGUAGE_COUNT] = {
    [LANGUAGE_EN] = {english_pairs, sizeof(english_pairs) / sizeof(english_pairs[0])},
    [LANGUAGE_ES] = {spanish_pairs, sizeof(spanish_pairs) / sizeof(spanish_pairs[0])},
};

struct role_entry {
    const char *word;
    unsigned roles;
};

struct roles {
    struct role_entry *entries;
    size_t count;
};

static int
by_word(const void *left, const void *right)
{
    return strcmp(((const struct role_entry *)left)->word,
                  ((const struct role_entry *)right)->word);
}

static void
add_words(struct roles *roles, const struct role_words *row, enum language language)
{
    const char *at = row->words;

    while (*at != '\0') {
        size_t length = strcspn(at, " ");
        struct role_entry *entry;

        roles->entries = memory_grow(roles, struct role_entry, roles->entries, roles->count);
        entry = &roles->entries[roles->count++];
        entry->word = sound_of(roles, memory_copy_n(roles, at, length), language);
        entry->roles = (unsigned)row->role;
        at += length + strspn(at + length, " ");
    }
}

struct roles *
roles_new(void *arena, enum language language)
{
    const struct role_words *table = language == LANGUAGE_ES ? spanish : english;
    size_t rows = language == LANGUAGE_ES ? sizeof(spanish) / sizeof(spanish[0])
                                          : sizeof(english) / sizeof(english[0]);
    struct roles *roles = memory_new(arena, struct roles);
    size_t i, kept = 0;

    for (i = 0; i < rows; i++) {
        add_words(roles, &table[i], language);
    }
    qsort(roles->entries, roles->count, sizeof(*roles->entries), by_word);
    for (i = 1; i < roles->count; i++) { /* a word with several roles becomes one entry */
        if (strcmp(roles->entries[kept].word, roles->entries[i].word) == 0) {
            roles->entries[kept].roles |= roles->entries[i].roles;
        } else {
            roles->entries[++kept] = roles->entries[i];
        }
    }
    roles->count = kept + 1;
    return roles;
}

void
roles_image(struct image *image, struct roles **of)
{
    struct roles *roles = image_array(image, of, 1);
    size_t i;

    image_array(image, &roles->entries, roles->count);
    for (i = 0; i < roles->count; i++) {
        image_text(image, &roles->entries[i].word);
    }
}

unsigned
roles_of(const struct roles *roles, const char *text)
{
    struct role_entry wanted = {text, 0};
    const struct role_entry *entry =
        bsearch(&wanted, roles->entries, roles->count, sizeof(*roles->entries), by_word);

    return entry == NULL ? 0 : entry->roles;
}

bool
roles_may_pair(enum language language, const char *first)
{
    size_t i;

    for (i = 0; i < pairs_of[language].count; i++) {
        if (strcmp(pairs_of[language].list[i].first, first) == 0) {
            return true;
        }
    }
    return false;
}

void
roles_each(enum language language, void (*take)(const char *word, void *user), void *user)
{
    const struct role_words *table = language == LANGUAGE_ES ? spanish : english;
    size_t rows = language == LANGUAGE_ES ? sizeof(spanish) / sizeof(spanish[0])
                                          : sizeof(english) / sizeof(english[0]);
    size_t i;

    for (i = 0; i < rows; i++) {
        char *words = memory_copy(NULL, table[i].words), *rest = words, *word;

        while ((word = strtok_r(rest, " ", &rest)) != NULL) {
            take(word, user);
        }
        talloc_free(words);
    }
    for (i = 0; i < pairs_of[language].count; i++) {
        take(pairs_of[language].list[i].first, user);
    }
}

const char *
roles_pair(enum language language, const char *first, const char *second)
{
    size_t i;

    for (i = 0; i < pairs_of[language].count; i++) {
        const struct role_pair *pair = &pairs_of[language].list[i];

        if (strcmp(pair->first, first) == 0 &&
            (second == NULL ? pair->second == NULL
                            : pair->second != NULL && strcmp(pair->second, second) == 0)) {
            return pair->one;
        }
    }
    return NULL;
}
