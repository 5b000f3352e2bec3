/*
 * What the warning signs of kb/signs must catch and must let pass. The first lists are the check
 * texts of the facts, section E6, and the published warning signs of E1 to E3; the others are the
 * same signs as people might text them (common practice, no source).
 */
#include <check.h>
#include <stdlib.h>

#include "memory.h"
#include "shipped.h"

static void
check_level(const char *text, enum sign_level wanted)
{
    struct sign_match match;
    bool is_shown = shipped_look(text, &match);

    ck_assert_msg(is_shown && match.sign->level == wanted, "\"%s\" gave %s", text,
                  is_shown ? match.sign->id : "no sign");
}

static const char *const emergencies[] = {
    /* facts E6, must fire */
    "he stopped breathing", "STOP he cant breathe", "machine quit and im blue",
    "cancel delivery chest pain", "cant stop coughing blood",
    /* facts E1: trouble breathing */
    "cant breathe", "cant catch my breath", "gasping", "too winded to talk", "I can't breathe",
    "i can not breathe", "short of breath", "Shortness of breath since last night",
    "my husband can hardly breathe", "having trouble breathing", "its hard for him to breathe",
    "his breathing is getting worse", "shes not breathing right", "i cant get enough air",
    "mom is struggling to breathe", "he cant finish a sentence",
    /* E1: chest */
    "chest tight", "elephant on chest", "my chest hurts", "pain in my chest",
    "my chest is really really tight", "pressure in my chest since an hour",
    "pain going down my left arm", "i think he has a heart attack",
    /* E1: cannot wake */
    "passed out", "wont wake up", "collapsed", "cant get my dad to wake up", "she won't wake up",
    "he is unresponsive", "my wife fainted in the hall", "couldnt wake her this morning",
    /* E1: confusion */
    "acting weird", "he is not making sense", "hes acting weird", "she is so confused", "loopy",
    /* E1: blue */
    "lips blue", "purple nails", "his lips are blue", "her fingernails look grey",
    "my wife is turning blue",
    /* E1, E2: blood, pink foam */
    "spitting blood", "coughing up blood", "vomiting blood", "pink foam coming out of his mouth",
    "frothy spit",
    /* E3: face, arm, speech */
    "face drooping", "slurring", "arm numb", "his speech is slurred", "cant lift his left arm",
    /* E2: staggering */
    "cant walk straight", "staggering around like drunk",
    /* E1: pain, bleeding, choking, poison, burn, head */
    "worst headache of my life", "bleeding wont stop", "he is choking", "cannula caught fire",
    "face burned", "there was a fire and his face got burned lighting a cigarette",
    "she hit her head and is bleeding", "carbon monoxide alarm is going",
    "there is smoke in the room", "it stopped when smoke came pouring out",
    "his lips are blue light headed too",
    /* E1: seizure, allergy */
    "shes having a seizure", "he is shaking uncontrollably", "throat swelling",
    /* E1, E3: crisis */
    "dont want to live", "i want to die", "going to kill myself", "thinking about suicide",
    /* no source of oxygen; battery that smokes; the words themselves */
    "out of oxygen", "we ran out of oxygen", "no oxygen left", "battery is hissing",
    "battery started smoking", "call an ambulance", "this is an emergency", "i think im dying",
    /* common practice, no source: lost or stuck outdoors */
    "we are stuck in the gondola", "we lost the trail", "we are trapped in the snow",
    /* amid other words */
    "no my chest hurts", "no cant breathe", "i dont know why but my chest hurts",
    "machine not working chest pain",
    "Thanks for the help with the charger, it was great. By the way my husband says his chest "
    "feels "
    "tight",
    /* misspelt */
    "cant breth", "cant breethe help", "brething is hard", "troble breathing", "chset pain",
    "unresponsve", "sezure", "he makes long pauses when sleeping", "can t br",
    "raised it to 4, now he is sleepy", "since we turned it up she sleeps all day",
    "i am pregnant and spotting", "air", "flat tire on the pass and no signal"};

/* What is denied beside it holds nothing back. */
static const char *const beside_denials[] = {
    "no chest pain and no dizziness, but she slid off the chair and does not answer me at all",
    "no fever no cough nothing like that, he just cannot get enough air even sitting still",
    "im not having a heart attack or anything but the whole left arm is heavy and the jaw hurts",
};

static const char *const clinical[] = {"wet cough for days",
                                       "coughing up yellow slime all week",
                                       "tos con flema desde hace dias",
                                       "should i turn it up",
                                       "can i turn up the oxygen",
                                       "can i turn my oxygen down",
                                       "should i increase the flow",
                                       "i turned it up to 4",
                                       "what setting should i use tonight",
                                       "i need more oxygen",
                                       "can i switch to pulse",
                                       "im dizzy",
                                       "bad headache",
                                       "feel light headed",
                                       "i dont feel good",
                                       "threw up twice",
                                       "her heart is racing",
                                       "swollen ankles",
                                       "turn it down to save battery"};

static const char *const equipment[] = {"no oxygen coming out",
                                        "machine wont turn on",
                                        "machine wont stop beeping",
                                        "the concentrator just died",
                                        "not getting any oxygen",
                                        "it keeps beeping",
                                        "the power went out",
                                        "power is out",
                                        "we lost power",
                                        "battery is swollen",
                                        "the battery is really hot",
                                        "my battery got wet",
                                        "the machine gives me shocks",
                                        "i put oil on the tank valve",
                                        "the oxygen tank is hissing",
                                        "the valve on the tank wont close",
                                        "tank needle is in the red",
                                        "valve on the tank is stuck",
                                        "regulator wont fit on the cylinder",
                                        "it says low purity",
                                        "the display says service required",
                                        "no breath detected",
                                        "battery empty, charger left at home",
                                        "charger brick light stays off. bat at 20%",
                                        "Unit has cut out of its own accord twice"};

static const char *const harmless[] = {
    /* facts E6: must not page a human as medical ("machine wont stop beeping" is above) */
    "this price gave me a heart attack lol", "im dying to ski",
    "i dont want to wake him, how do i change the battery", "the heating wont turn on",
    "we got lost looking for your shop", "the battery is stuck", "can i use vaselina on my nose",
    /* device words */
    "the battery died", "my charger died", "machine wont wake from sleep mode",
    "the screen wont wake up", "dead battery what do i do", "NO BREATH on the screen",
    "what does no breath mean", "faint beep from the unit",
    /* words of a sign in a text that is nothing like one */
    "his voice is gone from cheering at the game, when do you open",
    "is it bad for the machine to breathe cold stuff out on the porch",
    /* negated */
    "no chest pain", "no chest pain, just asking about the battery", "i have no trouble breathing",
    "not short of breath", "without chest pain", "my chest doesnt hurt",
    /* figures of speech */
    "takes my breath away what a view", "the view took my breath away", "i am dying for a coffee",
    "this paperwork is a headache", "sick of waiting",
    /* ordinary questions that share words with signs */
    "the blue light is on", "can i smoke near the machine",
    "how far from a flame does it have to be", "can we have a fire in the fireplace",
    "im confused about which button", "the instructions are confusing",
    "how hard do i have to breathe to trigger it", "does it beep if it cant sense my breath",
    "i cant find my breathing tube", "quiet enough so it doesnt wake my husband",
    "is there a strap across my chest for it", "cooking with gas ok?",
    "what is the emergency contact", "how many hours do i have left",
    "can we take it up the lift to 11000 feet", "turn down the volume", "is it ok in the shower",
    "where do i ship it back", "stop", "cancel my pickup", "what if i run out of oxygen",
    "will we run out of oxygen before morning", "what if the power goes out",
    "battery in a hot car ok?", "can he use it with 50 feet of blue tubing",
    "how do i turn on night mode", "does it charge in the car", "how long will two lights last",
    "unit makes long pauses between puffs at night", "nail polish and the finger clip",
    "the ambulance took him yesterday, who picks up the machine", "how do i open the tank",
    "is there room service", "the car broke down so we pick the unit up tomorrow",
    "left the charger in the cabin but the battery is full"};

START_TEST(an_emergency_is_seen)
{
    check_level(emergencies[_i], SIGN_EMERGENCY);
}
END_TEST

START_TEST(an_emergency_beside_denials_is_seen)
{
    check_level(beside_denials[_i], SIGN_EMERGENCY);
}
END_TEST

START_TEST(what_is_clinical_is_seen)
{
    check_level(clinical[_i], SIGN_CLINICAL);
}
END_TEST

START_TEST(a_unit_in_trouble_is_seen)
{
    check_level(equipment[_i], SIGN_EQUIPMENT);
}
END_TEST

START_TEST(an_ordinary_text_frightens_nobody)
{
    struct sign_match match;

    ck_assert_msg(!shipped_look(harmless[_i], &match), "\"%s\" gave %s", harmless[_i],
                  match.sign->id);
}
END_TEST

/* A sign in a sentence of its own fires whatever ordinary text stands around it. */
START_TEST(an_emergency_is_seen_amid_ordinary_texts)
{
    void *arena = memory_must(talloc_new(NULL));
    size_t i;

    for (i = 0; i < sizeof(harmless) / sizeof(harmless[0]); i++) {
        check_level(memory_format(arena, "%s. %s", harmless[i], emergencies[_i]), SIGN_EMERGENCY);
        check_level(memory_format(arena, "%s\n%s", emergencies[_i], harmless[i]), SIGN_EMERGENCY);
    }
    talloc_free(arena);
}
END_TEST

/* Few texts have commas: what "and", "but" and "because" join is about different things, and so is
 * what begins with "my". */
static const char *const joined[] = {
    "just a quick question about the carry bag and the charger cord because gasping for air and we "
    "leave tomorrow morning",
    "how long does a battery last on 2 and can i take it on the plane and i have chest pain and "
    "where is the filter",
    "thanks for the help yesterday the new battery works great but i want to die and i dont know "
    "what to do now",
    "thanks for the help yesterday the new battery works great but the unit is on fire and i dont "
    "know what to do now",
    "is the office open sunday my lips are kind of blue",
    "where is the filter my lips are kind of blue",
    "what time do you close my lips are blue",
    "can you extend us to monday my husband is bleeding from the ears",
    "can i keep it until sunday and smoke everywhere",
    "what day is my rental due and everything is going black",
    "what day is my rental due and rattlesnake bite hand",
    "how do i clean the filter bleeding bad how many hours do i get on setting 2",
    "a que hora abren se le esta cerrando la garganta puedo llevarlo en el avion",
    "puedo llevarlo en el avion se quemo la cara con el oxigeno cuando tengo que devolverlo"};

START_TEST(an_emergency_is_seen_that_is_joined_to_other_things)
{
    check_level(joined[_i], SIGN_EMERGENCY);
}
END_TEST

/* A question that is surely asked takes nothing from a danger beside it. */
START_TEST(a_question_takes_nothing_from_a_danger)
{
    static const char *const dangers[][2] = {
        {"electrocuted by the cord, he is on the floor", "se electrocuto con el cable"},
        {"my husband is bleeding from the ears", "mi esposo sangra por los oidos"},
        {"everything is going black", "me caigo, todo se pone negro"},
        {"a snake bit my hand", "me mordio una vibora en la mano"},
        {"smoke everywhere", "hay humo por todos lados"},
        {"her throat is closing up", "se le esta cerrando la garganta"},
        {"i think she had a stroke", "creo que le dio un derrame"},
        {"he is on the floor and turning blue", "esta en el piso y se pone azul"}};
    static const char *const questions[][2] = {
        {"what day is my rental due", "cuando tengo que devolverlo"},
        {"how do i clean the filter", "como limpio el filtro"},
        {"can i take it on the plane", "puedo llevarlo en el avion"},
        {"what time do you open", "a que hora abren"}};
    void *arena = memory_must(talloc_new(NULL));
    size_t i, k;
    int language;

    for (i = 0; i < sizeof(dangers) / sizeof(dangers[0]); i++) {
        for (k = 0; k < sizeof(questions) / sizeof(questions[0]); k++) {
            for (language = 0; language < 2; language++) {
                const char *danger = dangers[i][language], *question = questions[k][language];

                check_level(memory_format(arena, "%s. %s?", danger, question), SIGN_EMERGENCY);
                check_level(memory_format(arena, "%s? %s", question, danger), SIGN_EMERGENCY);
                check_level(memory_format(arena, "%s\n%s", danger, question), SIGN_EMERGENCY);
                check_level(memory_format(arena, "hi, %s? %s. thanks", question, danger),
                            SIGN_EMERGENCY);
            }
        }
    }
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("sign_content");
    TCase *tests = tcase_create("sign_content");
    SRunner *runner = srunner_create(suite);
    int emergency_count = sizeof(emergencies) / sizeof(emergencies[0]);
    int failed;

    /* Loaded once: the tests only read. */
    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, an_emergency_is_seen, 0, emergency_count);
    tcase_add_loop_test(tests, an_emergency_beside_denials_is_seen, 0,
                        sizeof(beside_denials) / sizeof(beside_denials[0]));
    tcase_add_loop_test(tests, what_is_clinical_is_seen, 0, sizeof(clinical) / sizeof(clinical[0]));
    tcase_add_loop_test(tests, a_unit_in_trouble_is_seen, 0,
                        sizeof(equipment) / sizeof(equipment[0]));
    tcase_add_loop_test(tests, an_ordinary_text_frightens_nobody, 0,
                        sizeof(harmless) / sizeof(harmless[0]));
    tcase_add_loop_test(tests, an_emergency_is_seen_amid_ordinary_texts, 0, emergency_count);
    tcase_add_loop_test(tests, an_emergency_is_seen_that_is_joined_to_other_things, 0,
                        sizeof(joined) / sizeof(joined[0]));
    tcase_add_test(tests, a_question_takes_nothing_from_a_danger);
    suite_add_tcase(suite, tests);
    /* A process for each text would copy the content each time. */
    srunner_set_fork_status(runner, CK_NOFORK);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
