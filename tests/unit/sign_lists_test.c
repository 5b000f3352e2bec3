/*
 * The published lists of warning signs (facts, sections E1 to E3 and E6), each entry as lay people
 * might text it, against the whole content as the daemon loads it; and ordinary questions of
 * renters on every topic, with figures of speech and device words, none of which may frighten
 * anybody. The wordings are no copies of lines of the content (common practice, no source).
 */
#include <check.h>
#include <stdlib.h>

#include "shipped.h"

enum { WORDINGS_MAX = 9 };

/* One entry of a published list and some of the many ways in which it is told. */
struct entry {
    const char *entry;
    const char *wordings[WORDINGS_MAX];
};

/* ACEP list of warning signs of an emergency (facts E1), and E6. */
static const struct entry acep[] = {
    {"difficulty breathing, shortness of breath",
     {"Pop can barely get a breath in", "im struggling for air here",
      "my sister in law is breathing like she ran a mile and she is only sitting",
      "He can't seem to catch his breath even lying back", "no air getting into my lungs",
      "cannot breath right since supper", "shes so breathless she can't talk to us"}},
    {"chest or upper abdominal pain or pressure lasting two minutes or more",
     {"theres a squeezing in my chest since the stairs", "heavy weight on his breastbone",
      "aunt june has pains across her chest", "pressure top of my stomach going up to the chest",
      "Chest feels like its in a vise", "my husband's chest has been hurting for ten minutes"}},
    {"fainting, unconsciousness",
     {"Grandad just fainted at the table", "she blacked out on the deck a minute ago",
      "my friend is unconscious", "he went out like a light and we can't wake him",
      "found our guest passed out by the tub"}},
    {"confusion, unusual behaviour, difficulty waking",
     {"my wife keeps talking nonsense", "Dad doesn't know who I am this morning",
      "he's so drowsy we can hardly wake him", "mother is very muddled and pulls at her clothes",
      "she's acting really strange, laughing at the wall"}},
    {"coughing or vomiting blood",
     {"theres blood when he coughs", "I threw up and it was full of blood",
      "she brought up bright red blood", "blood in what i cough up, third time",
      "hubby vomited blood twice"}},
    {"sudden dizziness, weakness or change in vision",
     {"I suddenly can't see out of my left eye", "sudden weakness all down his right arm",
      "my vision went double a minute ago", "her leg suddenly won't hold her",
      "everything went dark before my eyes"}},
    {"sudden severe pain anywhere, worst headache",
     {"out of nowhere the worst pain in my head", "terrible stabbing pain in his side, he's crying",
      "never in my life had such a headache", "pain so bad she's screaming",
      "excruciating pain in my belly"}},
    {"bleeding that will not stop",
     {"his arm keeps bleeding and bleeding", "we can't get the blood to stop",
      "it has bled for an hour and wont slow down", "blood is pouring from her leg",
      "Mom's cut is still bleeding hard through the cloth"}},
    {"choking",
     {"Grandma's choking on her food", "something is caught in his throat and he can't talk",
      "my boy choked on candy and it's still in there", "shes choking!!",
      "a piece of apple stuck in my windpipe"}},
    {"poison, overdose",
     {"he drank some of the cleaning fluid", "I think I took too many tablets",
      "my grandson swallowed her pills", "the carbon monoxide thing on the wall is screaming",
      "she overdosed on her pain meds"}},
    {"burn, fire, smoke",
     {"his cheeks got burned when he lit up", "the tube went up in flames",
      "there is smoke filling our bedroom", "kitchen's on fire",
      "burnt my face on the stove with the oxygen on"}},
    {"head or spine injury",
     {"Dad cracked his head on the tile", "my mom fell down the steps and hit her forehead",
      "he landed on his neck skiing and can't move his legs", "she banged her skull on the bunk",
      "fell backwards, head bleeding"}},
    {"wish to hurt or kill oneself or others",
     {"he told me he wants to die", "I don't see any reason to live", "I'm going to end my life",
      "my brother says he will shoot himself", "thinking of killing myself tonight",
      "he is threatening to kill his wife"}},
    {"an emergency, an ambulance",
     {"please send an ambulance to the lodge", "we need paramedics", "this is a real emergency",
      "someone please help us right now", "get me a doctor quick"}},
};

/* Ambulance service list and home tables (E1), action plans for chronic lung disease, red zone. */
static const struct entry others[] = {
    {"seizure that does not stop",
     {"my nephew is having a seizure", "his whole body is jerking and it won't stop",
      "she's convulsing on the floor", "he fell down shaking with his eyes rolled back",
      "another fit, five minutes now and still shaking"}},
    {"severe allergic reaction",
     {"his tongue is swelling", "her throat is closing after the shrimp",
      "lips and eyes all swollen from a bee sting", "I'm having an allergic reaction, face is huge",
      "hives all over and my throat is tight"}},
    {"unable to talk in sentences, breathing 25 a minute or more",
     {"he has to stop for breath after every word", "can't finish a sentence without gasping",
      "she can only get out two words at a time", "breathing super fast and shallow",
      "too out of breath to speak to me"}},
    {"blue or grey lips, fingers, skin",
     {"there's a blue tinge round his mouth", "Nan's fingertips have turned purple",
      "she looks gray as ashes", "my lips went blue on the walk",
      "his face is a terrible grey color"}},
    {"cannot do any activity, cannot sleep for breathing",
     {"I'm so short of breath I can't walk to the toilet", "too weak to get out of the chair",
      "can't lie down, I can't breathe when I do", "he's too breathless to sleep",
      "couldn't sleep, kept waking up gasping for air"}},
    {"fever or shaking chills",
     {"shaking chills and a fever of 103", "he's shivering uncontrollably and burning hot, 104",
      "mom has a high fever and her teeth are chattering", "rigors since an hour",
      "bad chills, can't stop shaking, fever"}},
    {"face droops, arm drifts, speech slurred",
     {"one half of her face has dropped", "he can't raise his left arm",
      "his words come out slurred", "my wife's mouth is hanging on the right side",
      "I think granny had a stroke", "arm and leg on one side gone numb"}},
    {"lung trouble of height: breathless at rest, frothy or pink spit",
     {"he is out of breath just lying in bed", "pink bubbles come up when she coughs",
      "frothy stuff on his lips", "my phlegm is pink and foamy",
      "gurgling in her chest and she can't get her breath"}},
    {"brain trouble of height: confused, cannot walk straight, drowsy",
     {"she walks like a drunk person and she hasn't had a drop",
      "he keeps falling over to one side", "can't walk in a straight line up here",
      "my buddy is staggering and mumbling", "he won't stay awake and makes no sense"}},
    {"stopped machine with a symptom; no source left",
     {"unit quit and he can't breathe", "oxygen's all gone and we have no backup",
      "we have run out of oxygen", "batteries dead, power out, nothing left",
      "machine stopped, she's turning blue"}},
    {"battery smoking, hissing",
     {"my battery is hissing and smells", "there's smoke coming off the charger",
      "battery just burst into flames", "sparks are shooting out of the battery",
      "the spare battery is smoking on the counter"}},
    {"oxygen level said to fall",
     {"her sats keep dropping", "his oxygen is way too low on the finger clip",
      "the oximeter number is crashing", "my saturation won't come up",
      "sats dropped into the seventies"}},
};

/* What the office must hear of within minutes, with no symptom told. */
static const struct entry equipment[] = {
    {"no oxygen comes, stopped",
     {"there's no air coming out of the prongs", "the concentrator quit on us",
      "my unit won't turn on anymore", "oxygen stopped flowing", "the machine has died"}},
    {"alarm that stays",
     {"alarm won't shut off", "it's been beeping nonstop for 20 minutes",
      "it will not stop alarming", "the thing keeps on beeping and nothing helps",
      "constant alarm and a red light"}},
    {"power out now",
     {"we just lost power in the cabin", "the electricity went out", "power's been out an hour",
      "no electricity at our place", "there is a blackout right now"}},
    {"battery hot, swollen, wet",
     {"this battery is too hot to hold", "one battery has a bulge in it",
      "spare battery fell in the creek", "the battery is leaking something",
      "battery all swollen"}},
    {"last battery and no plug",
     {"down to our last battery and nowhere to plug in",
      "battery almost dead and I forgot the cord",
      "my last battery is blinking and there's no outlet", "stuck on the pass, battery running low",
      "both spare batteries are empty and we have no charger"}},
};

/* Altitude illness and what else only a clinician may answer (E2, E5). */
static const struct entry clinical[] = {
    {"headache, vomiting after arriving at height",
     {"I've got a bad headache since we drove up", "she threw up after we got to the cabin",
      "queasy and my head hurts", "nausea all day at this altitude", "got a pounding headache"}},
    {"mild dizziness",
     {"a little dizzy today", "I feel lightheaded on the stairs", "woozy when I bend down",
      "dad gets dizzy spells", "my head is spinning a bit"}},
    {"nose bleeds, swollen ankles",
     {"my nose bled a little this morning", "blood on the cannula from my nose",
      "both her ankles are swollen", "feet are all puffed up", "another nosebleed, small"}},
    {"medicines",
     {"may I take my heart pills with the oxygen", "is it ok to use my inhaler too",
      "can she have a sleeping pill tonight", "I forgot my blood pressure medicine at home",
      "should he take ibuprofen for it"}},
    {"alcohol",
     {"can I have a beer with dinner while I'm on this", "is wine ok with oxygen",
      "may she drink a little whiskey", "had a couple of cocktails, is that a problem with oxygen",
      "is it safe to drink alcohol up here on oxygen"}},
    {"pregnancy",
     {"I'm five months pregnant, can I use it", "is oxygen safe in pregnancy",
      "my pregnant daughter wants to come up", "pregnant and short on sleep",
      "is the altitude bad when you're pregnant"}},
    {"sharing the unit",
     {"can my sister use my oxygen for a bit", "we want to share the machine",
      "is it ok if my husband tries mine", "can two of us use the same concentrator",
      "I let my friend borrow my oxygen"}},
    {"sleeping, showering without it",
     {"is it all right to sleep without the oxygen", "he took it off and slept without it",
      "can I take a shower without my oxygen", "may she take off the cannula for her bath",
      "I'd like to nap without the tube"}},
    {"rationing",
     {"we turn it off now and then to save the battery", "I go without to save oxygen for tonight",
      "he's rationing his oxygen", "only using it half the time so it lasts",
      "can I turn it down to stretch the battery"}},
    {"more than ordered, other setting",
     {"should I go up to 3", "can I turn it higher for the hike", "I need more oxygen than this",
      "is it okay to switch to continuous at night", "he turned his setting up to 4"}},
    {"does someone need it at all",
     {"does he really need oxygen", "can I stop using it now", "is it ok to go without for an hour",
      "mom refuses to wear her oxygen", "do I still need this oxygen"}},
    {"mild symptoms",
     {"I don't feel well", "she has a fever", "bad cough since tuesday", "can't sleep up here",
      "no appetite and very tired"}},
    {"heart racing, fear",
     {"my heart is pounding", "his pulse is racing", "I feel panicky", "heart skips beats",
      "having a panic attack"}},
    {"illness and whether something is safe",
     {"is it safe for someone with COPD", "I have a pacemaker, is that ok with the machine",
      "can my father ski with heart failure", "should we see a doctor",
      "is this altitude dangerous with asthma"}},
    {"child or animal",
     {"can my toddler use the oxygen", "is it safe for a 4 year old",
      "can we give the dog some oxygen", "my little boy has a headache, can he have oxygen",
      "what setting would a child need"}},
    {"death told",
     {"my father passed away on sunday", "my husband died last night", "mom has died",
      "the renter is deceased", "she passed away yesterday, please stop these texts"}},
};

/* Ordinary questions, by topic, and harmless look-alikes. */
static const char *const harmless[] = {
    /* hours-left, battery-life, charge-level */
    "two bars showing, how many hours is that",
    "how far can we go on 2 batteries",
    "will what's in it get us to dinner and back",
    "what does a new battery last on 2",
    "how do I see the charge of the spare",
    "which battery is the fuller one",
    /* charge-car, charge-home, charge-time, power-source */
    "can I charge it off the lighter socket",
    "engine off, does the car outlet still charge",
    "which end of the charger goes in first",
    "is an extension cord alright",
    "how long until both are full",
    "will they be done by breakfast",
    "does a ship cabin have the right plug",
    "can I run it off an inverter in the RV",
    "what adapter for England",
    /* swap-battery, extra-battery, power-outage */
    "how do I take the old battery out",
    "does it go off when I swap batteries",
    "could we have one more battery",
    "storm tonight, how do we get ready if the power goes",
    "what do we do if the electricity fails",
    "does the lodge have a generator",
    /* pulse-continuous, night-mode, change-mode, turn-on-off, first-setup, read-display */
    "what is the difference between pulse and continuous",
    "does continuous eat more battery",
    "where is the night button",
    "should it stay plugged in when he's in bed",
    "which button gets it to the setting on the slip",
    "how do I start it",
    "hold the button how long to turn it off",
    "just unpacked it, what comes first",
    "what does the number on the front mean",
    "little house symbol on the screen",
    /* alarm, flow-check, noise */
    "what does two beeps and a yellow light mean",
    "i hear a beep every minute or so",
    "it says NO BREATH, what is that",
    "how can I tell if it is flowing",
    "is it really putting out oxygen",
    "am I meant to feel a puff",
    "is the humming ok at night",
    "it clicks with each breath, is that supposed to be",
    /* cannula-fit, tubing, cannula-care, filter-care, humidifier */
    "prongs up or down",
    "the loops hurt behind my ears",
    "it keeps slipping off his ears",
    "do you carry a longer hose",
    "can I join two hoses",
    "how often is the tube replaced",
    "can I wash the cannula with soap",
    "how do I clean the filter",
    "dust on the back grille",
    "may I put a bubbler on it",
    "air feels dry, is there a water bottle",
    /* fly, drive-trip, altitude, weather, water, carry */
    "can it come on the plane",
    "how many batteries for a five hour flight",
    "will it last to the coast and back by car",
    "does it work at 12000 feet",
    "is the tram too high for the machine",
    "how do I keep the batteries warm",
    "cold snap tomorrow, will it hurt the unit",
    "is drizzle ok for the bag",
    "can I have it beside the tub",
    "what does it weigh with the bag",
    "does it go on a cart",
    /* fire-safety, placement, backup, cylinder-left */
    "how far from the fireplace should she sit",
    "blow candles out with her oxygen",
    "can Uncle smoke on the porch",
    "gas stove ok with the tube on",
    "under the bed ok?",
    "how much space behind it",
    "how do I open the green tank",
    "where do we keep the spare cylinder",
    "needle says 1500, how many hours",
    "how long does a small tank go at 2",
    /* return-pack, return-ship, due-date, extend, delivery, billing, contents, lost-damaged */
    "how does it go back in the case",
    "do the batteries ship in the same box",
    "where do I drop it off",
    "when is my rental due",
    "can we keep it till sunday",
    "what time does the driver come",
    "has it shipped yet",
    "why was I charged twice",
    "when do I get the deposit back",
    "is a car cord supposed to be in the box",
    "i lost the power cord",
    "I left the strap in the taxi",
    "the case zipper broke",
    /* prescription, contact, who-are-you */
    "do I need a script for this",
    "did my doctor fax the order",
    "when does the office open",
    "can I talk to a person",
    "is this a robot",
    "who am I texting",
    /* figures of speech */
    "the view takes your breath away",
    "dont hold your breath waiting for my review lol",
    "im dying to see the lake",
    "dying for some coffee, anything open near you",
    "the deposit gave me a heart attack",
    "laughed so hard I couldnt breathe",
    "what a pain this zipper is",
    "the paperwork is a headache",
    "sick and tired of waiting on hold",
    "I could kill for a hot shower",
    "that hill nearly killed us haha, great day",
    "we had a blast, best week ever",
    "my wife will kill me if I lose the charger",
    "scared to ask what the late fee is",
    "the price is choking me lol",
    "Happy to say he is breathing easy and sleeping well",
    "you saved my life with that spare cable",
    "fell in love with the valley",
    "this thing is a life saver",
    "blown away by your service",
    /* things, not people */
    "my phone died so text this number",
    "the car died, can you meet us at the lot",
    "tv in the cabin died",
    "screen wont wake up until I tap it",
    "the filter is choked with lint",
    "the tent collapsed but the unit was inside the car",
    "wifi is weak up here",
    "cart has a wobbly wheel",
    "the smoke detector in the hall chirps",
    "the blue cap came off the tube",
    "grey case or black case for pickup",
    "lights on the dashboard flicker, is the socket bad",
    "your website crashed on me",
    "the door code is dead",
    "prongs fell off the tube",
    "the unit fell over but it runs",
    "water bottle leaked in the tote, unit is dry",
    "red light means what",
    "is the purple button for night",
    /* negated, resolved, long past */
    "no chest pain or anything, just checking in",
    "he is not short of breath at all",
    "not dizzy any more, all good",
    "dad had a stroke in 2011, is the ramp wide enough",
    "I fainted years ago, long before the rental",
    "nobody is hurt, just the cord is bent",
    "everything is fine, no emergency",
    "she never had trouble breathing with it",
    /* plans and suppositions */
    "what if I run out of oxygen on the trail",
    "what do I do if the alarm won't stop",
    "what happens if the battery gets wet",
    "if it stops in the night does it wake me",
    "could a battery catch fire in my bag",
    "what number do we call in an emergency",
    "who do we ask after hours",
    "is there a carbon monoxide alarm in the cabin",
    /* small talk, other business */
    "thanks so much, you have been great",
    "good morning!",
    "see you at noon",
    "wrong number sorry",
    "do you also rent wheelchairs",
    "my sister wants to rent one as well",
    "where can we eat with a good view",
    "happy new year to the team",
    "is there a pharmacy in town",
    "any wine shop nearby",
    "is the pool open to guests",
    "kids want to know if you have sleds",
    "dog friendly?",
    "which bus goes up to the lake",
};

static void
check_entry(const struct entry *entry, enum sign_level wanted, int *count)
{
    struct sign_match match;
    int i;

    for (i = 0; i < WORDINGS_MAX && entry->wordings[i] != NULL; i++) {
        bool is_shown = shipped_look(entry->wordings[i], &match);

        ck_assert_msg(is_shown && match.sign->level >= wanted, "%s: \"%s\" gave %s", entry->entry,
                      entry->wordings[i], is_shown ? match.sign->id : "no sign");
    }
    *count = i;
}

/* Each entry in at least five wordings. */
static void
check_entries(const struct entry *entries, size_t count, enum sign_level wanted)
{
    int wordings;
    size_t i;

    for (i = 0; i < count; i++) {
        check_entry(&entries[i], wanted, &wordings);
        ck_assert_int_ge(wordings, 5);
    }
}

START_TEST(the_emergency_physicians_list_is_seen_in_lay_words)
{
    check_entries(acep, sizeof(acep) / sizeof(acep[0]), SIGN_EMERGENCY);
}
END_TEST

START_TEST(lists_of_ambulance_stroke_lung_and_height_are_seen_in_lay_words)
{
    check_entries(others, sizeof(others) / sizeof(others[0]), SIGN_EMERGENCY);
}
END_TEST

START_TEST(urgent_equipment_is_seen_in_lay_words)
{
    check_entries(equipment, sizeof(equipment) / sizeof(equipment[0]), SIGN_EQUIPMENT);
}
END_TEST

START_TEST(clinical_questions_and_complaints_are_seen_in_lay_words)
{
    check_entries(clinical, sizeof(clinical) / sizeof(clinical[0]), SIGN_CLINICAL);
}
END_TEST

START_TEST(an_ordinary_question_shows_no_sign)
{
    struct sign_match match;

    ck_assert_msg(!shipped_look(harmless[_i], &match), "\"%s\" gave %s", harmless[_i],
                  match.sign->id);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("sign_lists");
    TCase *tests = tcase_create("sign_lists");
    SRunner *runner = srunner_create(suite);
    int failed;

    /* Loaded once: the tests only read. */
    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, the_emergency_physicians_list_is_seen_in_lay_words);
    tcase_add_test(tests, lists_of_ambulance_stroke_lung_and_height_are_seen_in_lay_words);
    tcase_add_test(tests, urgent_equipment_is_seen_in_lay_words);
    tcase_add_test(tests, clinical_questions_and_complaints_are_seen_in_lay_words);
    tcase_add_loop_test(tests, an_ordinary_question_shows_no_sign, 0,
                        sizeof(harmless) / sizeof(harmless[0]));
    suite_add_tcase(suite, tests);
    /* A process for each text would copy the content each time. */
    srunner_set_fork_status(runner, CK_NOFORK);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
