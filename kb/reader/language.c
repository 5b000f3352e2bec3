/* Names of languages, and which of them a text is likelier to be in. */
#include "words.h"

#include <string.h>
#include <utf8proc.h>

#include "memory.h"

static const char *const codes[LANGUAGE_COUNT] = {"en", "es"};

const char *
language_code(enum language language)
{
    return codes[language];
}

enum language
language_named(const char *code)
{
    int language;

    for (language = 0; language < LANGUAGE_COUNT; language++) {
        if (strcmp(code, codes[language]) == 0) {
            break;
        }
    }
    return (enum language)language;
}

static bool
is_in(const char *word, const char *const *list, size_t count)
{
    size_t low = 0, high = count;

    while (low < high) {
        size_t middle = (low + high) / 2;
        int order = strcmp(word, list[middle]);

        if (order == 0) {
            return true;
        }
        if (order < 0) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    return false;
}

/* Common words that only one of the two languages has, in byte order. Whoever cries "help" may
 * speak either. */
static const char *const small_en[] = {
    "about",    "all",       "also",    "and",     "any",       "anyone", "are",    "at",
    "back",     "batteries", "battery", "be",      "because",   "been",   "before", "breath",
    "breathe",  "breathing", "but",     "by",      "call",      "came",   "can",    "cant",
    "car",      "chair",     "charge",  "charger", "charging",  "chest",  "could",  "day",
    "did",      "didnt",     "do",      "does",    "doesnt",    "dont",   "down",   "due",
    "even",     "ever",      "every",   "feel",    "feels",     "find",   "for",    "from",
    "get",      "getting",   "give",    "go",      "going",     "good",   "got",    "had",
    "happened", "have",      "having",  "head",    "her",       "here",   "him",    "his",
    "hour",     "hours",     "how",     "hurts",   "husband",   "i",      "id",     "if",
    "ill",      "im",        "in",      "is",      "isnt",      "it",     "its",    "ive",
    "just",     "keep",      "keeps",   "know",    "last",      "left",   "let",    "lips",
    "little",   "long",      "look",    "machine", "made",      "make",   "many",   "may",
    "maybe",    "minutes",   "morning", "much",    "my",        "need",   "needs",  "never",
    "new",      "night",     "not",     "now",     "of",        "off",    "office", "on",
    "one",      "or",        "our",     "out",     "over",      "oxygen", "pain",   "phone",
    "pick",     "plane",     "please",  "plug",    "power",     "put",    "really", "return",
    "right",    "room",      "said",    "same",    "say",       "says",   "see",    "she",
    "shes",     "should",    "some",    "someone", "something", "still",  "stop",   "stopped",
    "take",     "tank",      "tell",    "than",    "thank",     "thanks", "that",   "thats",
    "the",      "their",     "them",    "then",    "there",     "theres", "they",   "theyre",
    "thing",    "think",     "this",    "those",   "through",   "time",   "today",  "told",
    "tomorrow", "tonight",   "too",     "took",    "tried",     "try",    "turn",   "turned",
    "unit",     "until",     "up",      "us",      "very",      "wait",   "want",   "wants",
    "was",      "wasnt",     "way",     "we",      "well",      "were",   "what",   "whats",
    "when",     "where",     "which",   "while",   "who",       "why",    "wife",   "will",
    "with",     "without",   "wont",    "work",    "working",   "works",  "would",  "wrong",
    "yes",      "yet",       "you",     "your",    "youre",     "yours"};
static const char *const small_es[] = {
    "ahi",          "ahora",      "ahorita",    "aire",     "al",          "alargador",
    "algo",         "alguien",    "alguna",     "alguno",   "alla",        "ambulancia",
    "anoche",       "anos",       "ante",       "antes",    "apago",       "apagon",
    "aparato",      "aqui",       "asi",        "aun",      "aunque",      "auxilio",
    "ayer",         "ayuda",      "ayudame",    "ayudanos", "ayudeme",     "ayudenme",
    "ayudennos",    "ayudenos",   "azules",     "bateria",  "baterias",    "bien",
    "boca",         "brazo",      "buenas",     "bueno",    "buenos",      "cabeza",
    "cada",         "cama",       "canula",     "carga",    "cargada",     "cargadas",
    "cargador",     "cargar",     "carro",      "casi",     "cayo",        "cerca",
    "cilindro",     "coche",      "codigo",     "como",     "con",         "contesta",
    "convulsiones", "corazon",    "cual",       "cuales",   "cuando",      "cuanta",
    "cuantas",      "cuanto",     "cuantos",    "cuarto",   "cuesta",      "dado",
    "de",           "debajo",     "debe",       "dedo",     "dejo",        "del",
    "demasiado",    "derecho",    "desde",      "desmayo",  "despierta",   "despues",
    "dia",          "dias",       "dijo",       "disculpe", "disculpen",   "dolor",
    "donde",        "dormida",    "dormido",    "duele",    "duelen",      "duerme",
    "durante",      "el",         "electrica",  "ella",     "ellos",       "emergencia",
    "empezo",       "en",         "enchufe",    "encima",   "entendi",     "entiende",
    "entiendo",     "entonces",   "entrega",    "equipo",   "es",          "esa",
    "escupe",       "ese",        "eso",        "espanol",  "espero",      "esposa",
    "esposo",       "esta",       "estaba",     "estan",    "estar",       "estas",
    "este",         "esto",       "estoy",      "estuvo",   "falta",       "favor",
    "fiebre",       "flujo",      "foquito",    "foquitos", "fue",         "fuego",
    "fuera",        "fueron",     "fuerte",     "funciona", "garganta",    "gracias",
    "gusta",        "habia",      "habitacion", "hablar",   "hablo",       "hace",
    "hacen",        "hacer",      "hacia",      "hago",     "hasta",       "hay",
    "hermana",      "hermano",    "hice",       "hija",     "hijo",        "hizo",
    "hola",         "hora",       "horas",      "hoy",      "humo",        "igual",
    "incendio",     "ingles",     "izquierdo",  "junto",    "la",          "labios",
    "las",          "le",         "les",        "litro",    "litros",      "llama",
    "llamar",       "llame",      "llamen",     "llego",    "llena",       "llenas",
    "llenos",       "lleva",      "llevo",      "lo",       "los",         "luces",
    "luego",        "lugar",      "luz",        "manana",   "manometro",   "maquina",
    "maquinita",    "mareada",    "mareado",    "marido",   "mas",         "mejor",
    "menos",        "mi",         "mientras",   "mio",      "mis",         "misma",
    "mismo",        "mitad",      "morada",     "morado",   "morados",     "morir",
    "mucha",        "muchas",     "mucho",      "muchos",   "mueve",       "mujer",
    "murio",        "muy",        "nada",       "nadie",    "necesita",    "necesitamos",
    "necesito",     "nel",        "nina",       "ninguna",  "ninguno",     "nino",
    "noche",        "noches",     "nos",        "nosotros", "nuestra",     "nuestro",
    "nunca",        "o",          "otra",       "otro",     "oxigenacion", "oxigeno",
    "oximetro",     "para",       "parece",     "pasa",     "paso",        "pecho",
    "peor",         "perdon",     "pero",       "persona",  "pila",        "pilas",
    "poco",         "podemos",    "poder",      "podria",   "poquito",     "por",
    "porfa",        "porq",       "porque",     "prende",   "primero",     "pudo",
    "puede",        "pueden",     "puedo",      "pulso",    "puse",        "q",
    "que",          "quedo",      "quema",      "quemo",    "quien",       "quiere",
    "quieren",      "quiero",     "rayita",     "rayitas",  "recoger",     "regleta",
    "respira",      "respirando", "respirar",   "responde", "salio",       "sangre",
    "satura",       "saturacion", "saturando",  "sea",      "senor",       "senora",
    "sera",         "si",         "siempre",    "siente",   "siento",      "sigue",
    "siguen",       "sino",       "sobre",      "socorro",  "solo",        "su",
    "suelo",        "sus",        "tambien",    "tanque",   "tarde",       "tardes",
    "tenemos",      "tengo",      "tenia",      "tiempo",   "tiene",       "tienen",
    "toda",         "todas",      "todavia",    "todo",     "todos",       "tose",
    "trabaja",      "tuvo",       "un",         "una",      "uno",         "unos",
    "urgente",      "usted",      "ustedes",    "va",       "vamos",       "varias",
    "vez",          "viene",      "vomita",     "vomito",   "voy",         "vuelo",
    "xfa",          "xq",         "y",          "ya",       "yo"};

/* The letters and marks that English texts lack. */
static int
spanish_marks(const char *text)
{
    static const char *const marks[] = {"¿", "¡", "ñ", "Ñ", "á", "é", "í", "ó", "ú"};
    size_t i;

    for (i = 0; i < sizeof(marks) / sizeof(marks[0]); i++) {
        if (strstr(text, marks[i]) != NULL) {
            return 1;
        }
    }
    return 0;
}

/* Which of our common words a text has. */
struct spoken {
    int en, es;
    int words; /* in letters */
};

static struct spoken
spoken_in(const struct words *words, int marks)
{
    struct spoken spoken = {.es = marks};
    size_t i;

    for (i = 0; i < words->count; i++) {
        const char *word = words->list[i].text;

        spoken.es += is_in(word, small_es, sizeof(small_es) / sizeof(small_es[0]));
        spoken.en += is_in(word, small_en, sizeof(small_en) / sizeof(small_en[0]));
        spoken.words += (word[0] >= 'a' && word[0] <= 'z') || (unsigned char)word[0] >= 0x80;
    }
    return spoken;
}

static bool
tells(const struct spoken *spoken, enum language *language)
{
    if (spoken->en != spoken->es) {
        *language = spoken->es > spoken->en ? LANGUAGE_ES : LANGUAGE_EN;
    }
    return spoken->en != spoken->es;
}

bool
words_told_language(const struct words *words, enum language *language)
{
    struct spoken spoken = spoken_in(words, 0);

    return tells(&spoken, language);
}

bool
words_tell_language(void *arena, const char *text, enum language *language)
{
    struct words words = words_read(arena, NULL, text, LANGUAGE_EN);
    struct spoken spoken = spoken_in(&words, spanish_marks(text));

    return tells(&spoken, language);
}

enum language
words_language(void *arena, const char *text)
{
    enum language language = LANGUAGE_EN;

    words_tell_language(arena, text, &language);
    return language;
}

/* ---- Languages that we do not speak --------------------------------------------------------- */

/*
 * Their common words and those of a cry for help, as far as they are neither English nor Spanish
 * nor a name; thanks and greetings are left out. Common practice, no source.
 */
static const char *const elsewhere[] = {
    " je suis ne peux peut avec mari femme nous vous cest jai poitrine aidez secours appareil quoi "
    "dans pas urgence moi trop ", /* French */
    " ich nicht kein keine keinen mein meine ist und wir hilfe bitte luft bekomme sauerstoff geht "
    "mir mich sehr kann atmen brust schmerzen habe haben ", /* German */
    " nao meu minha voce estou muito muita ajuda posso tem uma peito ajudem parou oxigenio isso "
    "esse filho filha ", /* Portuguese */
    " sono della aiuto aiutatemi respirare riesco marito moglie posso petto molto ossigeno perche "
    "sto ",                                                                     /* Italian */
    " ik niet mijn geen adem krijg lucht hulp zuurstof pijn borst ",            /* Dutch */
    " nie jest moj moja moge oddychac pomocy prosze boli tlen ",                /* Polish */
    " hindi ako siya makahinga tulong nanay tatay namin dibdib masakit asawa ", /* Tagalog */
    " toi khong duoc giup nguc benh ",                                          /* Vietnamese */
    " mwen tanpri doule lestomak madanm pou ",                                  /* Haitian */
    " mogu dyshat pomogite muzh zhena ploho ", /* Russian, in Latin letters */
};

/* The most words of the text that one of those languages has, each word once. */
static int
spoken_elsewhere(void *arena, const struct words *words)
{
    int most = 0, count;
    size_t i, j;

    for (i = 0; i < sizeof(elsewhere) / sizeof(elsewhere[0]); i++) {
        char *seen = memory_copy(arena, " ");

        for (j = 0, count = 0; j < words->count; j++) {
            const char *word = memory_format(arena, " %s ", words->list[j].text);

            if (strstr(elsewhere[i], word) != NULL && strstr(seen, word) == NULL) {
                memory_append(&seen, "%s", word + 1);
                count++;
            }
        }
        most = count > most ? count : most;
    }
    return most;
}

/* True for a letter of any script but the Latin one. */
static bool
is_other_script(utf8proc_int32_t c)
{
    enum { LATIN_END = 0x2af, LATIN_MORE = 0x1e00, LATIN_MORE_END = 0x1eff };
    utf8proc_category_t category = utf8proc_category(c);
    bool is_letter = category >= UTF8PROC_CATEGORY_LU && category <= UTF8PROC_CATEGORY_LO;

    return is_letter && c > LATIN_END && !(c >= LATIN_MORE && c <= LATIN_MORE_END) &&
           !(c >= 0xff21 && c <= 0xff5a); /* full-width Latin */
}

/* True if a text has more letters of other scripts than Latin ones, and at least two. */
static bool
is_in_other_script(const char *text)
{
    size_t length = strnlen(text, WORDS_TEXT_MAX), at = 0;
    int others = 0, latin = 0;

    while (at < length) {
        utf8proc_int32_t c;
        utf8proc_ssize_t used = utf8proc_iterate((const utf8proc_uint8_t *)text + at,
                                                 (utf8proc_ssize_t)(length - at), &c);

        if (used <= 0) {
            at++; /* not UTF-8: skipped */
            continue;
        }
        others += is_other_script(c);
        latin += (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        at += (size_t)used;
    }
    return others >= 2 && others > latin;
}

bool
words_are_foreign(void *arena, const char *text, word_is_known *is_known, const void *user)
{
    enum { FEW = 3, ENOUGH = 4, KNOWN_OF = 4 };
    struct words words = words_read(arena, NULL, text, LANGUAGE_EN);
    struct spoken spoken = spoken_in(&words, spanish_marks(text));
    int ours = spoken.en > spoken.es ? spoken.en : spoken.es;
    int theirs = spoken_elsewhere(arena, &words), known = 0;
    size_t i;

    if (is_in_other_script(text)) {
        return true;
    }
    if (theirs > ours && (theirs > 1 || spoken.words <= FEW)) {
        return true;
    }
    if (ours > 0 || spoken.words < ENOUGH) {
        return false;
    }
    for (i = 0; i < words.count; i++) {
        known += is_known(user, words.list[i].text);
    }
    return known * KNOWN_OF <= spoken.words;
}
