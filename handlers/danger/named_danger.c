/*
 * A sign that only the likeness of a text to others tells, and of which the text names nothing: no
 * fire, no blood, no fall. Somebody may well be in danger, but what is said of it would be wrong,
 * and "take the tube off your face" or "get everyone outside" do harm where nothing burns. The
 * emergency stays one, in words that name no other: "say what you see". So many of the whole texts
 * of each file of signs name it so: 94 to 100 in 100.
 */
#include <string.h>

#include "found.h"
#include "slip.h"

/* A word of three letters and more also begins others. */
static const struct {
    const char *id, *words;
} named_by[] = {
    {"face-burn-fire",
     "smould smold grey haze hazy chimney curtain went black coughing fyre wisp ash ember glow "
     "tube hose cannula nublad humareda humit neblina negro tos sofa fire flame smok burn blaz "
     "spark cigar cigs lighter match candle singe scorch lit ignit explo whoosh flash "
     "stove oven grill barbecue fryer grease soot hot heat catch caught blister char gas vape "
     "pipe joint brows mustache beard pop incens fuego lumbre llama quem incend humo hume "
     "chisp vela prend arde arda ardi chamusc flama fogon estufa cocina chimenea caliente "
     "encend derrit ampolla bigote ceja pestan braser hornilla fum asad parrilla calcin hollin "
     "tizn boom revento brasa cerillo corto horno aceite"},
    {"bad-gas",
     "hibachi hood dizzy hissing disc air head pounding puked vomit fish bird asador monocs "
     "lejia liquido peces loro cajita sensor chill dormid mareo maread cabez carro coche gas "
     "co monox carbon propane fume smell odor detector alarm exhaust leak generator charcoal "
     "heater furnace stove engine garage running idling grill fire smok snow buried cherry "
     "everyone everybody both dog cat we us all kerosene chlor bleach ammonia burner rotten "
     "egg propano huele olor escape fuga generador brasero calentador estufa motor garaj lena "
     "humo todos nos perro gato tanque cloro nieve calefac prend hielo anafre chimenea huevo "
     "podrid peste"},
    {"scald",
     "pressure coals camp tetera sancocho pava contents pellejo hot burn boil water coffee tea "
     "scald steam soup oil kettle pot blister splash spill skin stove fryer bath pour grease "
     "humidif wax sizzl quem hirv agua cafe te vapor sopa aceite olla ampoll caldo piel estufa "
     "calient derram chocolate atole cera escald grasa cuero"},
    {"stroke-signs",
     "black swallow two fast gone all balbuc ciega vaso hemipar disart bioen derame tipping "
     "button face droop smil mouth slur speech speak talk word arm leg side numb weak tingl "
     "see blind eye grip drop stroke lopsid crooked half tongue hand foot fingers balanc walk "
     "dizzy hold lift say said sentenc marbl gibber drag hang letters double name corner read "
     "write fork cup phone spell cheek lip hear cara boca habl palabr brazo lado dormi adormec "
     "debil hormigue vis veo ve ojo ciego derrame chuec torc medio mitad lengua mano pie dedo "
     "camin equilibr arrastr enred sonri parpado mueve lev taza cuchar tiembl decir dice leer "
     "letra doble labio mejilla embolia mezcl cuelga trab"},
    {"allergic-reaction",
     "anaphyl anafil campanilla narrower inflam inflan brot gaznat enronch swell swol throat "
     "tongue lip face hives allerg sting stung bee wasp hornet epi pen itch rash welt shrimp "
     "nut peanut shellfish fish pill antibiotic med latex breath clos tight wheez puff eyes "
     "hoars voice egg milk blotch bump neck balloon flush bit scratch hinch garganta lengua "
     "labio cara alerg pica abeja avispa camaron nuez cacahuat marisco pescado inyec cierra "
     "cerr silb ojos ronc voz parpad salpull comezon rasc pastilla huevo cuello globo "
     "urticaria sarpull mani bloquead ahoga"},
    {"bleeding",
     "hemorrhag haemorrhag ax chainsaw saw thigh hand dog finger wrist split varic desangra "
     "aprieto revent vena compresa tajit charco hole leg blood bleed bled cut gash slic wound "
     "gush spurt pour soak towel bandage stab knife glass axe nose vein artery thinner "
     "warfarin red nick clot stitch tourniquet drip razor squirt pulse dialysis puddle leak "
     "ooz sangr cort herid tajo cuchillo vidrio sierra hacha arteria chorr toalla empap "
     "hemorrag nariz anticoagul coagul rojo roja torniquete abri brot derram cafe negro"},
    {"coughing-blood",
     "hemopt haemopt blud splatter butcher jam raspberr sanguaz manch servill coagul blood "
     "pink foam froth red rust coffee ground bubbl streak clot brown strawberr milk ketchup "
     "cherry rose dark black crimson scarlet beet wine salmon sangr espum rosa roj cafe negr "
     "burbuj colorad oscur fierro fresa hilos moho ladrill vino"},
    {"poison",
     "od spray tailpipe exhaust engine stove snow rattler scorpion spider fang envenen lamio "
     "intoxic calefon raticid probo alacran vibora arana pill take swallow drank drink ate eat "
     "med dose overdos bottle tablet bleach chemical antifreeze mushroom drug cleaner poison "
     "mix fume morphine insulin patch gummies edible weed heroin fent oxy opioid sleeping "
     "berry berries battery heater monox carbon mistake wrong double twice too many detergent "
     "soap paint gas alcohol vodka plant venom snake bit co lick sip chew bee inhal injected "
     "shot syringe glycol pastill pildor tom trag beb comi dosis frasco cloro quimic "
     "anticongel hongo drog limpia veneno mezcl morfina parche gomit mota sobredos equivoc "
     "error doble calentador ratas acido jarabe gotas capsul jabon thinner petroleo brasero "
     "generador picad inyect lej chup dio"},
    {"head-injury",
     "ground spill gash bonk swell smack wallop beam knock toques viper vibor pico se came "
     "neck stair hung dog horse dead drows telesilla litera head fall fell hit bump crash "
     "accident car truck sled ski snowboard board bike ladder steps slip trip drop struck blow "
     "skull land roll thrown threw kicked tree rock ice avalanch wreck face back hip leg arm "
     "bone broke egg lump cut bleed helmet roof cliff hole ditch water lake river electr "
     "shock current light bit knee ankle wrist injur hurt ran over down went off frost cave "
     "buried concuss cabeza cay cai cae golpe pego choc camion trineo esqui bici caballo "
     "escaler grada resbal tropez rod azot tumb tiro nuca frente craneo hueso pierna brazo "
     "cadera espalda rompi fractur chichon sangr corto hielo arbol piedra barranc vole volc "
     "lago rio ahog congel corrient descarg mordi tobillo muneca lastim herid atropell "
     "descalabr estrell"},
};

static bool
is_word_of(const char *text, const char *word, size_t length)
{
    enum { BEGINS = 3, SLIPS = 5, LONGEST = 24 };
    char known[LONGEST];

    if (length >= BEGINS && strncmp(text, word, length) == 0) {
        return true;
    }
    if (length >= sizeof known) {
        return false;
    }
    memcpy(known, word, length);
    known[length] = '\0';
    return strcmp(text, known) == 0 || (length >= SLIPS && slip_between(text, known) != SLIP_NONE);
}

static bool
names_one_of(const struct tokens *tokens, const char *words)
{
    const char *word;
    size_t length, i;

    for (word = words; *word != '\0'; word += length + (word[length] == ' ' ? 1 : 0)) {
        length = strcspn(word, " ");
        for (i = 0; i < tokens->count; i++) {
            if (tokens->list[i].kind == TOKEN_WORD &&
                is_word_of(tokens->list[i].text, word, length)) {
                return true;
            }
        }
    }
    return false;
}

/* In this text or in one just before, which may have made the sign with it. */
static bool
is_named(const struct asked *whole, const char *words)
{
    const struct context *context = whole->context;
    size_t i;

    for (i = 0; i < context->recent_count; i++) {
        struct tokens tokens = tokens_read(whole->arena, context->recent[i].text);

        if (names_one_of(&tokens, words)) {
            return true;
        }
    }
    return names_one_of(&whole->tokens, words);
}

static const char *
words_of(const char *id)
{
    size_t i;

    for (i = 0; i < sizeof named_by / sizeof named_by[0]; i++) {
        if (strcmp(named_by[i].id, id) == 0) {
            return named_by[i].words;
        }
    }
    return NULL;
}

void
found_leave_out_unnamed(const struct asked *whole, struct found *found)
{
    const struct sign *ill = kb_sign(whole->context->kb, GRAVELY_ILL, whole->language);
    bool is_left_out = false;
    size_t i = 0;

    while (ill != NULL && i < found->count) {
        const char *words = words_of(found->list[i].sign->id);

        if (words != NULL && found->list[i].by_likeness && !is_named(whole, words)) {
            found_leave_out(found, found->list[i].sign->id);
            is_left_out = true;
        } else {
            i++;
        }
    }
    if (is_left_out && !found_has_level(found, SIGN_EMERGENCY)) {
        found_add(found, ill);
    }
}
