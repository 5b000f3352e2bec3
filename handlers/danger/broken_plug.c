#include "broken_plug.h"

enum { REACH = 4 };

static const char things[] =
    " plug plugs outlet outlets socket sockets cord cords cable cables charger chargers adapter "
    "adaptor enchufe enchufes toma tomacorriente contacto contactos cargador cargadores adaptador ";
static const char broken[] =
    "broke|broken|dead|died|quit|quits|stopped working|stopped|not working|isnt working|aint "
    "working|doesnt work|does not work|dont work|didnt work|wont work|no longer works|wont charge|"
    "not charging|isnt charging|snapped|frayed|fried|burned out|burnt out|burned up|busted|bust|"
    "shot|cracked|melted|ruined|chewed|chewed up|cut|torn|ripped|bent|faulty|kaput|gave out|gone|"
    "missing|lost|no good|has no power|no power|se rompio|rompio|roto|rota|no sirve|ya no sirve|no "
    "funciona|no jala|no prende|murio|muerto|se quebro|quebrado|se quemo|quemado|no da|no carga|"
    "descompuesto|se descompuso|fallo|esta fallando|se perdio";
static const char did_break[] = " broke broken busted lost forgot snapped chewed cut tore ripped "
                                "dead bad faulty frayed rompi rompio rompieron quebro quemo murio "
                                "rompimos perdi perdimos olvide olvidamos ";
static const char between[] = " the my our his her a up on el la mi nuestro se me nos wall power "
                              "charging ac dc ";
/* A battery or a number between them is what is dead. */
static const char others[] =
    " battery batteries pack packs unit machine phone car bateria baterias pila pilas aparato "
    "maquina telefono and y but pero ";
static const char supposed[] = "if|what if|in case|si se|si el|en caso";
/* It is supposed only, or there is another one, or it is well again. */
static const char not_now[] =
    "if|what if|in case|si se|si el|en caso|fixed|replaced|new cord|new plug|new cable|new "
    "charger|another cord|another outlet|another plug|other outlet|other plug|another "
    "charger|other "
    "charger|spare charger|works now|working now|works again|plugged in|plugged it in|otro enchufe|"
    "otro cargador|otro cable|nuevo cargador|ya funciona|ya sirve|arreglado|arreglaron|ya enchufe|"
    "enchufado|enchufada|conectado|conectada";

static bool
is_denied(const struct tokens *tokens, size_t at)
{
    return at > 0 && token_among(tokens, at - 1, " not isnt arent wasnt no never nunca ");
}

/* "the wall plug quit working" */
static bool
breaks_behind(const struct tokens *tokens, size_t thing)
{
    size_t at;

    for (at = thing + 1; at <= thing + REACH && at < tokens->count; at++) {
        if (tokens_phrase_at(tokens, at, broken) > 0) {
            return !is_denied(tokens, at);
        }
        if (tokens->list[at].kind != TOKEN_WORD || token_among(tokens, at, others)) {
            return false;
        }
    }
    return false;
}

/* "the dog chewed up my cord", "broken plug" */
static bool
breaks_before(const struct tokens *tokens, size_t thing)
{
    size_t at = thing;

    while (at > 0 && token_among(tokens, at - 1, between)) {
        at--;
    }
    return at > 0 && token_among(tokens, at - 1, did_break) && !is_denied(tokens, at - 1);
}

enum breakage { TELLS_NOTHING, TELLS_BROKEN, TELLS_WELL };

static enum breakage
read_text(const struct asked *asked, const char *text)
{
    struct tokens tokens = tokens_read(asked->arena, text);
    size_t at;

    if (tokens_have(&tokens, not_now)) {
        return tokens_have(&tokens, supposed) ? TELLS_NOTHING : TELLS_WELL;
    }
    for (at = 0; at < tokens.count; at++) {
        if (token_among(&tokens, at, things) &&
            (breaks_behind(&tokens, at) || breaks_before(&tokens, at))) {
            return TELLS_BROKEN;
        }
    }
    return TELLS_NOTHING;
}

bool
broken_plug_is_told(const struct asked *asked)
{
    const struct context *context = asked->context;
    enum breakage tells = read_text(asked, asked->message->text);
    size_t i;

    for (i = context->recent_count; i > 0 && tells == TELLS_NOTHING; i--) {
        tells = read_text(asked, context->recent[i - 1].text);
    }
    return tells == TELLS_BROKEN;
}

void
broken_plug_call(const struct asked *asked, struct verdict *verdict)
{
    if (broken_plug_is_told(asked)) {
        verdict_alert(verdict, ALERT_URGENT, false, "power:no-plug", "plug or cord broken");
    }
}
