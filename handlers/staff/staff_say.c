#include "staff_say.h"

#include "memory.h"

char *
staff_say_number(const struct asked *whole, int64_t number)
{
    return memory_format(whole->arena, "%lld", (long long)number);
}

struct answer *
staff_say_words(struct verdict *verdict, const char *words)
{
    struct answer *answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "staff");

    answer->text = words;
    return answer;
}

struct answer *
staff_say(const struct asked *whole, struct verdict *verdict, enum phrase phrase, const char *first,
          const char *second)
{
    return staff_say_words(verdict, say(whole->arena, whole->context->house, LANGUAGE_EN, phrase,
                                        first, second, NULL));
}
