/* What wants no answer or a short one: thanks, greetings, emoji, a picture without words. */
#include "say.h"
#include "steps.h"

static const char greetings[] = " hi hello hey hola yo howdy good morning afternoon evening buenos "
                                "buenas dias tardes noches there greetings test testing ";
static const char thanks[] =
    " thanks thank you thx ty tysm thankyou gracias muchas so much a lot ok okay k "
    "kk great cool awesome perfect got it will do sure fine nice appreciate "
    "appreciated that very helpful for the all good bye goodnight night no "
    "worries yes y n yep nope si vale bueno listo perfecto lol haha muy amable "
    "amables mil por todo igualmente saludos bendiciones adios hasta luego genial "
    "excelente muchisimas de corazon agradecida agradecido que dios la lo los las le "
    "te bendiga bless bendice god guys are best cuidense chao chau feliz noche dia "
    "linda tarde bien buena ";

/* What is thanked for; "ok help" is none. */
static const char our_help[] =
    "your help|the help|for help|ur help|helping|for the * help|for your * help|for all the help|"
    "for all your help|su ayuda|tu ayuda|la ayuda|por su * ayuda|por tanta ayuda|"
    "por ayudar|por ayudarme|por ayudarnos";

/* How it was, told with nothing beside it: "we had a great time", "la pasamos muy bien". */
static const char liked[] =
    "had a * time|had a * trip|had a * stay|had a * week|had a * weekend|had a * vacation|"
    "had a * visit|had a blast|had * fun|such a * time|such a * week|such a * trip|such a * "
    "stay|such a * visit|great trip|great time|great stay|good "
    "trip|"
    "wonderful trip|lovely trip|amazing trip|beautiful trip|loved it|loved every|loved our|enjoyed|"
    "was wonderful|was great|was lovely|was perfect|went great|went well|went perfectly|"
    "went smoothly|la pasamos|lo pasamos|la pase|lo pase|nos encanto|me encanto|nos gusto|"
    "nos fue|salio muy bien|estuvo muy|fue un viaje";
static const char liking[] =
    " we i he she they had have a an the our my his her such very really just so lovely great good "
    "wonderful nice amazing fantastic beautiful perfect blast fun best awesome super time trip "
    "stay visit week weekend vacation holiday days every minute of it with here there this and it "
    "was all everything went great well perfectly smoothly loved enjoyed mom dad wife husband "
    "family ourselves everyone y la lo nos me pasamos pase paso muy re bien bonito padre "
    "padrisimo increible todo salio estuvo excelente encanto gusto mucho viaje un una unos dias "
    "estancia semana vacaciones fue hermoso hermosa bella lindo mi familia ";

static bool
only_words_of(const struct tokens *tokens, const char *words, const char *or_of, bool *has_first)
{
    size_t i;

    *has_first = false;
    for (i = 0; i < tokens->count; i++) {
        bool first = token_among(tokens, i, words);

        if (tokens->list[i].kind == TOKEN_NUMBER || token_is(tokens, i, "?")) {
            return false;
        }
        if (tokens->list[i].kind == TOKEN_SIGN) {
            continue;
        }
        if (!first && !token_among(tokens, i, or_of)) {
            return false;
        }
        *has_first = *has_first || first;
    }
    return true;
}

bool
courtesy_decide(const struct asked *asked, struct verdict *verdict)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, our_help);
    struct answer *answer;
    bool greets, thanking;

    if (asked->tokens.count == 0 && asked->message->attachments > 0) {
        answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "picture");
        answer->text = say(asked->arena, asked->context->house, asked->language, SAY_PICTURE, NULL);
        if (asked_is_active_renter(asked)) {
            verdict_alert(verdict, ALERT_OFFICE, false, "picture", "sent a picture");
        }
        return true;
    }
    thanking = only_words_of(&rest, thanks, thanks, &greets) ||
               (tokens_have(&rest, liked) && only_words_of(&rest, liking, thanks, &greets));
    if (thanking) {
        verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, "thanks");
        return true;
    }
    if (only_words_of(&asked->tokens, greetings, thanks, &greets) && greets) {
        answer = verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, "hello");
        answer->text = say(asked->arena, asked->context->house, asked->language, SAY_HELLO, NULL);
        return true;
    }
    return false;
}

/* It thanks, praises, laughs or agrees in words that are listed, beside others. */
static const char kind[] =
    " thanks thank thx ty gracias grax cheers appreciate obliged great awesome perfect "
    "perfecto love loved best bless bendiga amable lol haha jaja jajaja jeje angel genial "
    "excelente welcome ";
/* What tells of trouble is no courtesy, whatever it is like. */
static const char unkind[] =
    " not no never nothing hard bad wrong hurt hurts sick ill worse problem trouble broke "
    "broken lost fell fall falling pain stuck scared dead die died dying cant wont dont "
    "didnt doesnt isnt stopped stop again help hospital nadie nada nunca mal malo mala peor "
    "duele dolor enfermo enferma problema roto rota perdi cayo cai miedo muerto murio "
    "contesta ayuda ";

static bool
has_number(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_NUMBER) {
            return true;
        }
    }
    return false;
}

/* In doubt the office hears of it, as of any text that finds no answer. */
bool
courtesy_like_decide(const struct asked *asked, struct verdict *verdict)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, our_help);
    struct answer *answer;

    if (asked->search.sureness == SURE || asked->context->alert_count > 0 ||
        asked_open_question(asked) != QUESTION_NONE || has_number(&asked->tokens) ||
        tokens_any_among(&rest, 0, unkind) || tokens_have(&asked->tokens, "?") ||
        !kb_is_courtesy(asked->context->kb, asked->context->workspace, asked->text,
                        asked->language)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, "courtesy");
    answer->text = say(asked->arena, asked->context->house, asked->language, SAY_COURTESY, NULL);
    if (asked_is_active_renter(asked) && !tokens_any_among(&asked->tokens, 0, kind)) {
        verdict_alert(verdict, ALERT_OFFICE, false, "courtesy", "wrote what wants no answer");
    }
    return true;
}
