/* Phone numbers: from any usual spelling to E.164. */
#include "gateway.h"

#include <string.h>
#include <strings.h>

#include "memory.h"

enum {
    DIGITS_MAX = 15, /* ITU-T E.164 */
    SHORT_CODE_MIN = 3,
    SHORT_CODE_MAX = 8,
    SPELLING_MAX = 64
};

/*
 * Leaves "+" and digits of "tel:+1 (208) 555-0123;phone-context=x" (RFC 3966 for the scheme, the
 * parameters and the separators). False if anything else stands in it.
 */
static bool
reduce(const char *text, char *digits, bool *has_plus)
{
    size_t used = 0;

    if (strncasecmp(text, "tel:", 4) == 0 || strncasecmp(text, "sms:", 4) == 0) {
        text += 4;
    }
    *has_plus = false;
    for (; *text != '\0' && *text != ';'; text++) {
        if (*text >= '0' && *text <= '9') {
            if (used == SPELLING_MAX) {
                return false;
            }
            digits[used++] = *text;
        } else if (*text == '+' && used == 0 && !*has_plus) {
            *has_plus = true;
        } else if (strchr(" -.()/\t", *text) == NULL) {
            return false;
        }
    }
    digits[used] = '\0';
    return used > 0;
}

static bool
starts_with(const char *text, const char *start)
{
    return strncmp(text, start, strlen(start)) == 0;
}

/* Whether these digits are a whole national number of the configured country. */
static bool
is_national(const struct config *config, const char *digits)
{
    size_t length = strlen(digits);

    if (config->national_digits == 0) {
        return false; /* of any length: only the prefix tells */
    }
    /* In the North American plan no area code starts with 0 or 1. */
    return length == (size_t)config->national_digits &&
           (strcmp(config->country_code, "1") != 0 || digits[0] > '1');
}

/* What stands behind the national prefix, or NULL. */
static const char *
behind_national_prefix(const struct config *config, const char *digits)
{
    const char *rest = digits + strlen(config->national_prefix);

    if (*config->national_prefix == '\0' || !starts_with(digits, config->national_prefix)) {
        return NULL;
    }
    if (config->national_digits == 0 ? strlen(rest) < 4 : !is_national(config, rest)) {
        return NULL;
    }
    return rest;
}

/* What stands behind 00, or 011 in the North American plan, or NULL. */
static const char *
behind_exit_code(const struct config *config, const char *digits)
{
    const char *code =
        strcmp(config->country_code, "1") == 0 && starts_with(digits, "011") ? "011" : "00";

    return starts_with(digits, code) ? digits + strlen(code) : NULL;
}

static char *
international(void *arena, const char *country_code, const char *digits)
{
    char *number = memory_format(arena, "+%s%s", country_code, digits);
    size_t length = strlen(number) - 1;

    return length < 2 || length > DIGITS_MAX || number[1] == '0' ? NULL : number;
}

char *
gateway_phone(void *arena, const struct config *config, const char *text)
{
    char digits[SPELLING_MAX + 1];
    const char *rest;
    bool has_plus;
    size_t length;

    if (!reduce(text, digits, &has_plus)) {
        return NULL;
    }
    length = strlen(digits);
    if (has_plus) {
        return international(arena, "", digits);
    }
    if (is_national(config, digits)) {
        return international(arena, config->country_code, digits);
    }
    if ((rest = behind_exit_code(config, digits)) != NULL) {
        return international(arena, "", rest);
    }
    if ((rest = behind_national_prefix(config, digits)) != NULL) {
        return international(arena, config->country_code, rest);
    }
    if (length >= SHORT_CODE_MIN && length <= SHORT_CODE_MAX) {
        return memory_copy(arena, digits);
    }
    /* "12085550123": a plus that got lost, as in a form where + means a space */
    if (starts_with(digits, config->country_code) &&
        (config->national_digits == 0 ||
         is_national(config, digits + strlen(config->country_code)))) {
        return international(arena, "", digits);
    }
    return NULL;
}
