/*
 * A sentence asks if it is put as a question or a wish, wherever in it; a question mark tells
 * nothing, for many leave it out.
 *
 * Tried and dropped: clauses instead of sentences (what stands before a comma is often half of the
 * question), and to let the others count together as much as those that ask.
 */
#include "stress.h"

#include <string.h>

#include "cut_words.h"
#include "memory.h"

/* What a sentence beside one that asks counts; 0.6 to 0.85 do alike on texts/dev.jsonl. */
static const float beside = 0.7f;

/* Sentences that ask must name so many things; "is that ok" needs all of what it stands beside. */
enum { NAMING_ENOUGH = 2 };

/* A verb before its subject, anywhere in a sentence: "can he", "does this". */
static const char *const subjects[CUT_LETTERS] = {
    ['a' - 'a'] = "a|an|any|anybody|anyone|all",
    ['d' - 'a'] = "dad|dads",
    ['g' - 'a'] = "grandma|grandpa",
    ['h' - 'a'] = "he|her|his",
    ['i' - 'a'] = "i|it|its",
    ['m' - 'a'] = "my|mom|mine|mother|moms",
    ['o' - 'a'] = "our|one",
    ['s' - 'a'] = "she|someone|somebody",
    ['t' - 'a'] = "the|this|that|these|they|there|those",
    ['u' - 'a'] = "u|us",
    ['w' - 'a'] = "we",
    ['y' - 'a'] = "you|your",
};

static const char *const verbs[CUT_LETTERS] = {
    ['a' - 'a'] = "am|are|arent",
    ['c' - 'a'] = "can|cant|could|couldnt",
    ['d' - 'a'] = "do|does|did|dont|doesnt|didnt",
    ['h' - 'a'] = "has|have|had",
    ['i' - 'a'] = "is|isnt",
    ['m' - 'a'] = "may|must|might",
    ['s' - 'a'] = "should|shouldnt|shall",
    ['w' - 'a'] = "will|wont|would|wouldnt|was|were",
};

/* What asks wherever it stands. */
static const char *const askers[CUT_LETTERS] = {
    ['a' - 'a'] = "any idea|any chance|any way|advise",
    ['c' - 'a'] = "cant find|cant figure|cant tell|curious|can you|could you|confused about",
    ['d' - 'a'] = "dont know|dont understand|dont see|dont get",
    ['e' - 'a'] = "explain",
    ['h' - 'a'] = "how|hows|help me|help with",
    ['i' - 'a'] = "id like to|i need|i want",
    ['l' - 'a'] = "let me know|let us know",
    ['n' - 'a'] = "need to know|need a|need an|need more|need another|no idea|not sure",
    ['o' - 'a'] = "ok to|okay to|ok if|okay if",
    ['r' - 'a'] = "remind me",
    ['s' - 'a'] = "send me|show me|supposed to",
    ['t' - 'a'] = "tell me|tell us",
    ['w' - 'a'] = ("what|whats|where|wheres|which|why|whys|wondering|whether|want to know|"
                   "wants to know|we need|we want|would like"),
};

bool
stress_asks(const struct words *words, size_t from, size_t to)
{
    size_t at;

    for (at = from; at < to; at++) {
        size_t verb = cut_words_at(words, at, verbs);

        if (cut_words_at(words, at, askers) > 0 ||
            (verb > 0 && at + verb < to && cut_words_at(words, at + verb, subjects) > 0 &&
             (at == from || cut_words_at(words, at - 1, subjects) == 0))) {
            return true;
        }
    }
    return false;
}

float *
stress_of(void *arena, const struct words *words)
{
    float *stress = memory_array(arena, float, words->count + 1);
    bool is_one = words->count == 0 || words->list[words->count - 1].sentence == 0;
    size_t from = 0, naming = 0, at;

    for (at = 1; at <= words->count && !is_one; at++) {
        if (at == words->count || words->list[at].sentence != words->list[at - 1].sentence) {
            bool does = stress_asks(words, from, at);

            naming += does ? cut_words_naming(words, from, at) : 0;
            for (; from < at; from++) {
                stress[from] = does ? 1 : beside;
            }
        }
    }
    for (at = 0; at < words->count && naming < NAMING_ENOUGH; at++) {
        stress[at] = 1;
    }
    return stress;
}
