#include "cut_words.h"

#include <string.h>

/* Words that begin a question, alone or after "and". */
const char *const cut_openers[CUT_LETTERS] = {
    ['a' - 'a'] = "are|am",
    ['c' - 'a'] = "can|could|como|cual|cuando|cuanto|cuanta|cuantas|cuantos",
    ['d' - 'a'] = "does|do|did|do i|donde",
    ['e' - 'a'] = "es",
    ['h' - 'a'] = "how|has|have we|have you|hows|hay",
    ['i' - 'a'] = "is",
    ['m' - 'a'] = "may",
    ['p' - 'a'] = "puedo|puede|podria|por que",
    ['q' - 'a'] = "que|quien",
    ['s' - 'a'] = "should|se puede",
    ['t' - 'a'] = "tengo que",
    ['w' - 'a'] = ("what|whats|where|wheres|when|whens|which|who|why|will|would|was|were|"
                   "whos"),
};

/* Words that say: now comes something else. */
const char *const cut_turns[CUT_LETTERS] = {
    ['a' - 'a'] = "also|and also|another thing|another question|ademas|aparte",
    ['b' - 'a'] = "btw|by the way",
    ['n' - 'a'] = "next question",
    ['o' - 'a'] = ("one more thing|one more question|oh and|other question|otra cosa|"
                   "otra pregunta"),
    ['p' - 'a'] = "plus",
    ['s' - 'a'] = "second question",
    ['t' - 'a'] = "tambien",
    ['y' - 'a'] = "y tambien",
};

const char *const cut_joiners[CUT_LETTERS] = {
    ['a' - 'a'] = "and",  ['b' - 'a'] = "but", ['e' - 'a'] = "e",    ['n' - 'a'] = "n",
    ['p' - 'a'] = "pero", ['s' - 'a'] = "so",  ['t' - 'a'] = "then", ['y' - 'a'] = "y",
};

/* What is asked for without asking. */
const char *const cut_requests[CUT_LETTERS] = {
    ['d' - 'a'] = "deme|digame|dime",
    ['e' - 'a'] = "enviame",
    ['g' - 'a'] = "give me",
    ['l' - 'a'] = "let me know|let us know",
    ['m' - 'a'] = "mandeme",
    ['p' - 'a'] = "please give me|please tell me|please send me|pls tell me|pls send me",
    ['r' - 'a'] = "remind me",
    ['s' - 'a'] = "send me|show me",
    ['t' - 'a'] = "tell me|text me",
};

/* "if so give me the number", "if not can you bring one": a short condition leads over. */
const char *const cut_conditions[CUT_LETTERS] = {
    ['i' - 'a'] = "if so|if not|if yes|if no|if|in case",
    ['o' - 'a'] = "otherwise|or",
    ['s' - 'a'] = "si no|si",
};

/* Pleasantries that may stand alone, before or after a question. */
const char *const cut_courtesies[CUT_LETTERS] = {
    ['a' - 'a'] = ("appreciate it|appreciate you|appreciate your help|a question|awesome|"
                   "all good|adios|aww|awww|aw"),
    ['b' - 'a'] = ("bless you|bless your heart|bye|best regards|buenas|buenos dias|buen dia|"
                   "buenas tardes|buenas noches|bendiciones"),
    ['c' - 'a'] = "cool|cheers",
    ['d' - 'a'] = "dear|disculpe|disculpa|dios le bendiga|dios los bendiga",
    ['e' - 'a'] = "evening|excuse me|excellent",
    ['g' - 'a'] = ("greetings|good morning|good afternoon|good evening|good day|good night|"
                   "goodnight|gm|got a question|great|got it|god bless|god bless you|"
                   "goodbye|gracias|gosh|golly"),
    ['h' - 'a'] = ("hi|hello|hey|hiya|howdy|have a good one|have a good day|have a nice day|"
                   "have a great day|have a good night|have a good evening|haha|ha ha|"
                   "hope all is well|hope you are well|hope youre well|"
                   "hope youre doing well|how are you|how are you today|hola"),
    ['i' - 'a'] = "i appreciate it|i have a question|in advance|i was wondering",
    ['j' - 'a'] = "just wondering|just curious|jaja|jajaja|jeje|jejeje|jijiji",
    ['k' - 'a'] = "k|kk",
    ['l' - 'a'] = "lol|listo",
    ['m' - 'a'] = "morning|many thanks|much appreciated|muchas gracias|mil gracias",
    ['n' - 'a'] = "no worries|no problem|np",
    ['o' - 'a'] = "one question|ok|okay|omg|oh my|oh my gosh|orale|orale pues",
    ['p' - 'a'] = ("please|pls|plz|plse|pardon me|perfect|por favor|porfa|porfavor|perdon|"
                   "perdone|perfecto|phew"),
    ['q' - 'a'] = "quick question|quick one|question|que tenga buen dia",
    ['r' - 'a'] = "regards",
    ['s' - 'a'] = ("sorry|so sorry|sorry to bother you|sorry to bother|"
                   "sorry for the late text|sorry so late|sorry its late|sounds good|"
                   "sincerely|saludos"),
    ['t' - 'a'] = ("thanks|thank you|thank u|thanku|thankyou|thx|thnx|thanx|tx|tks|ty|tysm|"
                   "tyvm|take care"),
    ['u' - 'a'] = "una pregunta|uff|ufff",
    ['v' - 'a'] = "vale",
    ['w' - 'a'] = "we appreciate it|wonderful|will do|wow|woohoo",
    ['x' - 'a'] = "xo",
    ['y' - 'a'] = ("yo|youre welcome|you too|you guys are great|youre the best|"
                   "you are the best|youre a lifesaver|you have been so helpful|"
                   "youve been so helpful|yay|yayy|yippee"),
};

/* What may follow a pleasantry and is none by itself. */
const char *const cut_followers[CUT_LETTERS] = {
    ['a' - 'a'] = "again|all|a lot|alot|a bunch|a million|a ton|again so much|and|a todos",
    ['d' - 'a'] = "de nuevo",
    ['e' - 'a'] = "everyone",
    ['f' - 'a'] = ("folks|friend|friends|for your help|for the help|for all your help|"
                   "for everything|for that|for the info|for the quick reply|"
                   "for getting back to me|for you|for u"),
    ['g' - 'a'] = "guys",
    ['m' - 'a'] = "maam|miss|much",
    ['p' - 'a'] = "por todo|por su ayuda",
    ['s' - 'a'] = "sir|so much|senor|senora",
    ['t' - 'a'] = "there|team|to you|then",
    ['v' - 'a'] = "very much",
    ['y' - 'a'] = "yall|you all|y",
};

/* What may end a text after its question. */
const char *const cut_closers[CUT_LETTERS] = {
    ['a' - 'a'] = "appreciate it",
    ['b' - 'a'] = "bless you",
    ['g' - 'a'] = "god bless|gracias",
    ['h' - 'a'] = "haha|have a good day|have a nice day|have a great day|have a good night",
    ['l' - 'a'] = "lol",
    ['m' - 'a'] = "many thanks|much appreciated|muchas gracias",
    ['p' - 'a'] = "please|pls|plz|por favor|porfa",
    ['s' - 'a'] = "saludos",
    ['t' - 'a'] = "thanks|thank you|thank u|thankyou|thx|thnx|thanx|tks|ty|tysm",
};

/* Words that name nothing: a question of these alone ("is that ok", "what would you say") wants
 * no answer beside the one to what was said before it. */
const char *const cut_small_words[CUT_LETTERS] = {
    ['a' - 'a'] = "a|about|advise|all|alright|am|an|and|any|are|as|at",
    ['b' - 'a'] = "bad|be|been|but|by",
    ['c' - 'a'] = "can|cant|could",
    ['d' - 'a'] = "did|do|does|doesnt|dont",
    ['e' - 'a'] = "else|explain|explaining",
    ['f' - 'a'] = "fine|for|from",
    ['g' - 'a'] = "good|guess",
    ['h' - 'a'] = "had|has|have|he|her|him|his|how",
    ['i' - 'a'] = "i|id|if|im|in|is|isnt|it|its",
    ['j' - 'a'] = "just",
    ['k' - 'a'] = "kind|know",
    ['l' - 'a'] = "let|like",
    ['m' - 'a'] = "may|me|mean|might|mind|my",
    ['n' - 'a'] = "n|no|normal|not|now",
    ['o' - 'a'] = "of|ok|okay|on|or|our",
    ['p' - 'a'] = "please|possible",
    ['r' - 'a'] = "really|recommend|right",
    ['s' - 'a'] = "safe|say|she|should|so|suggest|sure",
    ['t' - 'a'] = ("tell|that|thats|the|them|then|there|these|they|thing|think|this|those|"
                   "to|true"),
    ['u' - 'a'] = "us",
    ['w' - 'a'] = ("was|we|well|were|what|whats|which|why|will|with|wondering|worry|would|"
                   "wrong"),
    ['y' - 'a'] = "yes|you|your",
};

const char *const cut_names_after[CUT_LETTERS] = {
    ['h' - 'a'] = "habla", ['i' - 'a'] = "its|it is|im|i am", ['m' - 'a'] = "my name is|me llamo",
    ['s' - 'a'] = "soy",   ['t' - 'a'] = "this is",
};

/* Never a name, however it is written. */
const char *const cut_no_names[CUT_LETTERS] = {
    ['a' - 'a'] = "asap|alarm|ayuda",
    ['b' - 'a'] = "battery",
    ['d' - 'a'] = "dead",
    ['e' - 'a'] = "emergency",
    ['h' - 'a'] = "help|hurry",
    ['n' - 'a'] = "now",
    ['o' - 'a'] = "oxygen|o2|oxigeno",
    ['s' - 'a'] = "stop",
    ['u' - 'a'] = "urgent",
    ['y' - 'a'] = "ya",
};

/* "ok to sleep with it": what asks for leave, and how it goes on. */
const char *const cut_agreed[CUT_LETTERS] = {['o' - 'a'] = "ok|okay"};
const char *const cut_leave[CUT_LETTERS] = {['f' - 'a'] = "for",
                                            ['i' - 'a'] = "if|in",
                                            ['o' - 'a'] = "on",
                                            ['t' - 'a'] = "to",
                                            ['w' - 'a'] = "with"};

/* True if a word is what a phrase begins with. Letter by letter: most differ in the second. */
static bool
word_is(const char *word, const char *phrase)
{
    while (*word != '\0' && *word == *phrase) {
        word++;
        phrase++;
    }
    return *word == '\0' && (*phrase == ' ' || *phrase == '|' || *phrase == '\0');
}

size_t
cut_words_at(const struct words *words, size_t at, const char *const phrases[CUT_LETTERS])
{
    const char *left;
    size_t best = 0, i = at;
    bool stands = true;

    if (at >= words->count || words->list[at].text[0] < 'a' || words->list[at].text[0] > 'z') {
        return 0;
    }
    left = phrases[words->list[at].text[0] - 'a'];
    while (left != NULL && *left != '\0') {
        stands = stands && i < words->count && word_is(words->list[i].text, left);
        while (*left != ' ' && *left != '|' && *left != '\0') {
            left++;
        }
        i++;
        if (*left != ' ') {
            best = stands && i - at > best ? i - at : best;
            i = at;
            stands = true;
        }
        left += *left != '\0';
    }
    return best;
}

size_t
cut_words_naming(const struct words *words, size_t from, size_t to)
{
    size_t count = 0;

    for (; from < to; from++) {
        count += cut_words_at(words, from, cut_small_words) == 0;
    }
    return count;
}
