/* English: see lexicon.h. */
#include "lexicon_rows.h"

const struct lexicon_entry lexicon_en[] = {
    /* ---- little words -------------------------------------------------------------------- */
    OWN(ITEM_ARTICLE, 0, "a|an"),
    OWN(ITEM_LINK, 0,
        "is|are|be|s|re|it|it "
        "is|the|this|that|these|those|my|his|her|hers|their|theirs|our|ours|your|i|he|she|we|"
        "you|thats|of mine|them|ones|just|only|still|already|exactly|im|hes|shes|do|does|did|"
        "there|here|me|us|him|then|also|well|really|so|maybe its|charge|"
        "reading|theres|there is|there are|machine|unit|percentage|"
        "gauge|screen|display|fully|all the way|"
        "more|new|extra|good|little|big|large|small|older|old|uh|um|umm|er|hmm|"
        "remaining charge|to be|lithium|charged|mid|upper|standard|regular|same|"
        "low|lower|high|rented|rental|=|total|in total|altogether|up"),
    ROW(ITEM_AND, 0, "and|&|+|plus|n|an then|and then"),
    OWN(ITEM_TO, 0, "to|or|thru"),
    ROW(ITEM_TO, 0, "-"),
    ROW(ITEM_BETWEEN, 0, "between|somewhere between|anywhere from"),
    ROW(ITEM_OF, 0, "of|out of|of the|out of the|of all|outta|of my"),
    ROW(ITEM_NOT, 0,
        "not|no longer|neither|neither is|neither one is|isnt|arent|wasnt|aint|never|not "
        "the|instead "
        "of|rather than|nowhere near"),
    ROW(ITEM_AT, AT_ON,
        "at number|at flow number|back at|back to|back on|on|on a|on the|on number|set on"),
    ROW(ITEM_AT, AT_AT, "at|@|at a|is set to|set to|set at|setting at|at the"),
    OWN(ITEM_AT, AT_IN, "in|in the|in a|in my|for|for a|with the"),
    ROW(ITEM_HAVE, 0,
        "have|has|got|had|ive got|weve got|hes got|shes got|ive|weve|with|w|w /|carrying|packing|"
        "bringing|brought|packed|we packed|packin|comes with|came with|they gave us|they gave "
        "me|gave me|taking|holding|own|there were|i got|using|only have|just have|only got"),
    ROW(ITEM_WILL_BE, 0,
        "when|how soon|be|get|get to|getting|gets|become|til its|till its|until its|til "
        "theyre|till "
        "theyre|"
        "until theyre|until it is|till it is|til it is|until they are|until they|until it|till|"
        "til|until|when is it|when are they|when will it be|when its|when it is|when theyre|"
        "up to|all the way to|to get to|reach|reaches|hit|hits|is it|are they|want|want it|"
        "want them|need it|need them|wants it|be at|get it to|get them to|get it|get them|makes it "
        "to|"
        "make it to|back to|done at|stop at|stopping at|before its|before it is|"
        "till all are|until all are|til all are|til all|till all|until all|when are all"),
    /* ---- parts of one -------------------------------------------------------------------- */
    ROW(ITEM_HALF, 0,
        "halves|halfs|half ones|half|haf|haff|hlf|hafl|haf full|haff full|hlf full|halfway|half "
        "way|half full|half "
        "charged|half a charge|half charge|"
        "half empty|half gone|half a|half of|a half|one half|half of a"),
    ROW(ITEM_QUARTER, 0,
        "quarter|a quarter|one quarter|quarter full|a quarter full|a fourth|"
        "one fourth|a quarter charge|quarter charge|quarter of a|quarter of an|"
        "a quarter of a|a quarter of an"),
    ROW(ITEM_FRACTION, 750,
        "three - quarters|three - quarter|three - fourths|three quarters|three quarter|3 "
        "quarters|threequarters|three fourths|three quarters full|"
        "three quarters of a|three quarters of an|3 quarters full"),
    ROW(ITEM_FRACTION, 667, "two - thirds|two thirds|2 thirds|two thirds full|two third"),
    ROW(ITEM_FRACTION, 333,
        "on a third|a 3 rd|at a third|down to a third|to a third|a third|one third|a third "
        "full|one third "
        "full|a third left"),
    ROW(ITEM_FRACTION, 200, "a fifth|one fifth"),
    ROW(ITEM_FRACTION, 400, "two fifths"),
    ROW(ITEM_FRACTION, 600, "three fifths"),
    ROW(ITEM_FRACTION, 800, "four fifths"),
    ROW(ITEM_HEDGE, 0,
        "bout|bout like|roundabout|somewhere near|in the neighborhood of|id say its|lets "
        "say|about|around|like|roughly|approx|approximately|maybe|maybe about|maybe like|guessing|"
        "i guess|id guess|ill guess|i think|i think its|i think like|probably|prob|prolly|possibly|"
        "~|somewhere around|id say|id guess its|could be|perhaps|call it|or around|near|near about|"
        "close to|kind of|kinda|say about|something like|i believe"),
    ROW(ITEM_HEDGE_AFTER, 0,
        "id say|id guess|i would say|i would guess|if i had to guess|im guessing|guessing|my "
        "guess|as best i can tell|best i can tell|ish|- ish|or so|give or take|or thereabouts|i "
        "think|i guess|more or less|or about that|"
        "or something|or something like that|probably|roughly|i believe|maybe|if i remember right|"
        "if i read it right|thereabouts"),
    ROW(ITEM_SOMETHING, 0,
        "and a bit|and a little|and some|something|some|somethin|- something|odd|and change|ty "
        "something"),
    ROW(ITEM_MINUS, 0, "minus|negative"),
    /* ---- batteries and how full they are -------------------------------------------------- */
    ROW(ITEM_BATTERY, 1,
        "battery #|batt #|bat #|pack #|battery number|battery no|brick|power "
        "brick|cartridge|battery|batt|bat|batery|batterie|battry|pack|battery pack|power pack|"
        "cell pack|batery pack|batterys"),
    ROW(ITEM_BATTERY, 2,
        "bricks|power bricks|cartridges|batteries|batts|bats|baterys|packs|battery "
        "packs|batterries"),
    ROW(ITEM_OTHER, 0,
        "the internal|internal|the internal one|internal battery|the external|external|the "
        "external one|external battery|the extra|my extra|mains|other|other one|the "
        "other|the other one|another|another "
        "one|spare|the spare|spare "
        "one|"
        "backup|back up|backup one|back up battery|extra one|this one|that one|main one|main|"
        "main battery|big one|small one|new one|old one|my spare|my backup|current one|"
        "next one|one more|newer one|older one|other battery|spare battery|"
        "backup battery|extra battery"),
    ROW(ITEM_OTHER, 2,
        "extras|the extras|other ones|the other ones|the rest|rest of them|rest of the "
        "batteries|remaining ones|spares|others|the "
        "others|backups"),
    ROW(ITEM_ORDINAL, 1, "b1|p1|first battery|first|first one|the first|the first one"),
    ROW(ITEM_ORDINAL, 2,
        "b2|p2|second battery|second|second one|a second|the second|the second one|a second one"),
    ROW(ITEM_ORDINAL, 3, "b3|p3|third battery|third|third one|a third one|the third|the third one"),
    ROW(ITEM_ORDINAL, 4, "b4|p4|fourth battery|fourth|fourth one|the fourth|the fourth one"),
    ROW(ITEM_ORDINAL, ORDINAL_LAST, "last one|the last one|last battery"),
    ROW(ITEM_BOTH, 0,
        "either battery|either of them|both|both of them|both of the|both of my|the two of "
        "them|the pair|both the|"
        "both my"),
    ROW(ITEM_ALL, 0,
        "all|all of them|all of the|all of my|they|theyre|theyre all|they are|them all|"
        "em all|all the|all my|all are|all at"),
    ROW(ITEM_EACH, 0,
        "the pair of them|both of em|for the pair|each|apiece|each one|each of them|a piece|per "
        "battery|every one|in each|"
        "on each|on each one|in each one|on every one"),
    ROW(ITEM_SAME, 0,
        "too|as well|also the same|the same|same|is the same|same as that|likewise|"
        "is too|so is the other|same with the other|same for the other"),
    ROW(ITEM_UNKNOWN, 0,
        "screen is blank|screen is dark|display is blank|display is dark|no number on it|shows "
        "nothing|"
        "hasnt been looked at|hasnt been checked|hasnt been tried|havent even looked at|havent "
        "even looked|havent even checked|havent even opened|havent touched|not looked at it|is a "
        "mystery|havent gotten to|who knows what|no way to tell|cant make out|couldnt read|couldnt "
        "see|havent turned it on|not tested|never turned on|god knows|lord knows|0 idea|zero "
        "idea|cant get at|cant get to|cant reach|nobody checked|nobody looked|nobody knows|no one "
        "checked|never looked|didnt get to check|havent looked at it|have no idea|not told|havent "
        "checked|have not checked|havent looked|havent looked at|didnt check|not checked|dont "
        "know|not sure|not sure of|not sure of charge|not started|not been started|no idea|who "
        "knows|forgot to check|forgot to look|forgot to look at|hasnt "
        "been touched|unknown|cant tell|unsure|couldnt tell you|never checked|forgot what|forgot "
        "how|didnt look|havent tested|untested|dunno|no clue|cant see|cant read|unchecked|havent "
        "seen|didnt look at|not looked at|dont remember|i cant see"),
    ROW(ITEM_FULL, 0,
        "brimful|full to the brim|full to the top|topped right up|charged all the way|are all "
        "charged|are charged|is charged|is all charged|are both charged|both charged|all "
        "charged|all charged and ready|charged and ready|full|fulls|fully charged|full "
        "charged|fully chargd|charged full|topped off|topped up|"
        "done charging|finished charging|charged all the way up|all charged up|charged up|fully "
        "topped off|full up|maxed out|full charge|"
        "a full charge|completely full|totally full|completely charged|full ones|full one|"
        "fresh|freshly charged|fresh charged|fresh one|fresh ones|fresh off the charger|just off "
        "the charger|straight off the charger|right off the charger|hot off the charger|brand new "
        "off the charger|"
        "juiced|juiced up|all juiced up|juiced to the max|maxed|brimming|to the brim|"
        "chock full|charged to the max|charged to the brim|charged all the way|"
        "all the way charged|all the way full|charged completely|"
        "full to the top|full to the brim|full to the max|"
        "good and full|full as can be|charged right up|hundred percenters|"
        "topped right off|all topped off|all topped up|toped off|totally charged|100 full|"
        "at full charge|fully juiced|brim full|fully topped up"),
    CHARGE(0, 0,
           "zilch|zilch in it|nothing in it|nothing left in it|nada in it|zip in it|flat ones|flat "
           "one|ded|dead|empty|drained|depleted|used up|dead flat|is flat|are "
           "flat|both flat|went "
           "flat|gone flat|pancake flat|flat as a pancake|totally flat|completely flat|run "
           "flat|run down|all run down|tapped out|"
           "kaput|bone dry|at zero|at nothing|at nil|flat battery|gone flat|went "
           "flat|flat "
           "dead|empties|dead ones|empty ones|completely dead|"
           "totally dead|bone dead|stone dead|completely empty|dead one|empty one|"
           "out of charge|zero|out of juice|all used up|down to nothing|"
           "discharged|isnt charged|isnt charged at all|not charged at all|uncharged"),
    CHARGE(85, 99,
           "almost full|nearly full|just about full|close to full|practically full|"
           "almost fully charged|nearly fully charged|pretty much full|near full|"
           "almost all the way full|almost topped off|not quite full|just under full|"
           "a hair under full|its almost full|it is almost full|its nearly full"),
    CHARGE(75, 99, "mostly full"),
    CHARGE(0, 10,
           "nearly out of juice|almost out of juice|running on fumes|on fumes|"
           "almost dead|nearly dead|almost empty|nearly empty|about dead|just about dead|"
           "just about empty|close to dead|close to empty|practically dead|basically dead|"
           "pretty much dead|almost out|nearly out|almost gone|practically empty|near dead|"
           "near empty|about empty|almost drained|nearly drained|on its last legs|"
           "basically empty|pretty much empty|about to die|nearly gone|its almost dead|its almost "
           "empty|"
           "it is almost dead|it is almost empty"),
    CHARGE(45, 55,
           "midway|about midway|around midway|around the middle|near the middle|at the halfway "
           "mark|halfway mark"),
    CHARGE(50, 65,
           "a bit over half|a little over half|bit over half|little over half|just over half|"
           "slightly over half|a bit more than half|a little more than half|a tad over half|"
           "just above half|over half|more than half|a bit above half|a hair over half|"
           "slightly more than half|a smidge over half|little more than half|bit more than half|"
           "a little above half|better than half"),
    CHARGE(35, 50,
           "a bit under half|a little under half|just under half|slightly under half|"
           "a bit less than half|a little less than half|a tad under half|just below half|"
           "a bit below half|not quite half|almost half|nearly half|a hair under half|"
           "slightly less than half|slightly below half|a little below half"),
    CHARGE(0, 25, "less than a quarter|under a quarter|below a quarter|not even a quarter"),
    CHARGE(
        10, 25,
        "a little under a quarter|just under a quarter|a bit less than a quarter|almost a quarter|"
        "nearly a quarter|a bit under a quarter"),
    CHARGE(25, 40,
           "more than a quarter|over a quarter|a bit over a quarter|just over a quarter|"
           "a little over a quarter|a little more than a quarter"),
    CHARGE(60, 75,
           "almost three quarters|nearly three quarters|just under three quarters|"
           "a bit under three quarters|a little under three quarters"),
    CHARGE(75, 90,
           "more than three quarters|over three quarters|a bit over three quarters|"
           "just over three quarters|a little over three quarters|better than three quarters"),
    CHARGE(0, 50, "less than half|under half|below half"),
    ROW(ITEM_LIGHT, 1,
        "bar|lamp|little lamp|light|led|lite|dot|gauge light|green light|solid light|lit light"),
    ROW(ITEM_LIGHT, 2,
        "bars|lamps|little lamps|lights|leds|lites|dots|gauge lights|green lights|solid lights|lit "
        "lights|"
        "solid green lights|little lights|little green lights|lights lit|solid|lit|steady|"
        "battery lights|charge lights|indicator lights|blue lights|solid bars|"
        "green dots|blue dots|white lights|white dots|white bars|green leds|blue leds|blue "
        "bars|little dots|"
        "little bars|little green dots|little green bars|battery dots|charge dots|segments|"
        "green segments|lights on the gauge|lights showing|bars showing|bars left|lights left|bars "
        "on it|lights on it|lights glowing|"
        "green bars|charge bars|battery bars|gauge bars"),
    ROW(ITEM_DIM, 0,
        "half lit|is half lit|only half lit|is only half lit|is dim|blinking|flashing|"
        "is blinking|is flashing|only half on|is only half on|partly lit|half a light|"
        "half a bar|dim|barely lit|faint|flickering"),
    ROW(ITEM_SHOWS, 1,
        "juice is|juice is at|juice at|power level is|power is at|made it to|made it up to|got up "
        "to|climbed to|climbed up to|is up to|came up to|indicates|is indicating|measures|tells "
        "me|puts it at|woke up to|woke up with|is charged to|are charged to|is charged up to|are "
        "charged up "
        "to|both charged to|are both "
        "charged to|all charged to|are all charged to|is all charged to|is charged at|are charged "
        "at|is charged about|are charged "
        "about|says|say|said|shows|show|showing|showed|reads|reading|read|displays|display says|"
        "charged it to|charged them to|i charged it to|charged it up to|topped it off at|topped it "
        "to|"
        "readout|readout is|readout says|battery reading is|gauge is|gauge is at|meter is|meter is "
        "at|"
        "battery percentage is|percentage is|charge percentage is|display is|display is at|screen "
        "is|screen is at|percentage is at|is hovering at|is hovering around|hovering "
        "around|hanging at|is "
        "hanging at|hangs at|rests at|clocks in at|registers|registering|is registering|has fallen "
        "to|has sunk to|sunk to|is sinking to|slid to|crept down to|went from full to|is all the "
        "way "
        "down to|just dropped to|just went to|just fell to|settled at|"
        "down around|"
        "has dropped to|has gone down to|now down to|down to|sank to|dropped to|drops to|dropped "
        "down to|fell to|drained to|went down to|"
        "went to|only charged to|charged to|got down to|its down to|charge is|level is|battery "
        "level|charge level|charge level is|battery level is|"
        "showing at|reading at|says its at|is down to|are down to|is reading|is showing|"
        "her box says|his box says|my box says|the box says|box says|keeps flickering|keeps "
        "bouncing|keeps jumping|keeps flipping|keeps hopping|keeps switching|"
        "bouncing|bounces|jumping|flips|flipping|fluctuating|goes back and forth|going back and "
        "forth|"
        "flickers|flickering|wavering|"
        "was saying|down at|hovering at|reads at|shows at|came off at|just came off at"),
    ROW(ITEM_SHOWS, 0,
        "is sitting at|are sitting at|are holding at|are hovering at|are reading|are showing|are "
        "up to|mine|mines|mine is|mine says|mine shows|mine reads|just hit|just reached|sits "
        "at|sitting "
        "at|holding at|stuck at"),
    ROW(ITEM_FROM, 0, "from|starting from|starting at|going from|to go from|take it from"),
    /* ---- mode and setting ------------------------------------------------------------------ */
    ROW(ITEM_SETTING, 0,
        "moved me to|moved him to|moved her to|bumped me to|bumped me up to|bumped him to|bumped "
        "her to|bumped him up to|bumped her up to|raised me to|raised him to|raised her to|changed "
        "me to|changed him to|changed her to|switched me to|upped me to|upped it to|upped him "
        "to|upped her to|put me up to|my usual|his usual|her usual|usual setting|usual is|usual "
        "number|number is at|number is "
        "on|number is set at|number is set to|number at|nr|nr .|no . "
        "is|number is at|number is on|number is set at|number is set to|number at|nr|nr .|no . "
        "is|cranked up at|crank it to|crank it up to|cranked it to|cranked it up to|bump it "
        "to|bump "
        "it up to|dial "
        "it to|"
        "dial it up to|dial it down to|set it to|kick it up to|switch it to|put it to|drop it to|"
        "dropped it to|lower it to|lowered it to|raise it to|raised it to|move it to|moved it to|"
        "turn it up to|turn it down to|bring it down to|bring it up to|knock it down to|"
        "flow setting|flow setting is|cranked to|cranked up to|cranked down to|turned it up to|"
        "turned it down to|turned it to|turn it to|bumped it to|bumped it up to|put it on|put it "
        "at|"
        "have it on|have it at|got it on|got it at|leave it on|leave it at|keep it on|keep it at|"
        "dialed up to|dialed down to|dial at|dial says|knob says|stays on|stay on|"
        "sttng|sttg|setting|settings|setng|settg|level|lvl|dial|dialed to|dial is on|dialed in "
        "at|set|setting "
        "is|"
        "setting of|setting number|set to number|flow|flow rate|dose|setting at|setting on|"
        "liter setting|setting to|turned to|turned down to|turned up to|moved to|switched to|"
        "bumped to|up to setting|knob on|knob at|flow of|flow is|flow at"),
    ROW(ITEM_MODE, MODE_PULSE,
        "pulse|pulsed|pulsing|pulse dose|pulse mode|pulse flow|pulse setting|"
        "pulsedose|puls|pulce|on plse|plse mode|plse dose|plse setting"),
    ROW(ITEM_MODE, MODE_CONTINUOUS,
        "steady flow|continuous|continuos|continuously|continous|cont|constant|constant "
        "flow|continuous flow|"
        "continuous mode|continuous setting|cont flow|contin|cont ."),
    ROW(ITEM_MODE, MODE_NIGHT,
        "night mode|sleep mode|nighttime mode|at night setting|at the night setting|night "
        "setting|sleep setting"),
    ROW(ITEM_WORD, 0,
        "road is shut|road is closed|road closed|roads closed|roads are closed|road is blocked|the "
        "road opens|road opens|road to open|roads open|halfway to|halfway there|halfway "
        "through|halfway up|halfway down|halfway round|halfway "
        "around|halfway across|halfway out|halfway in|dead on arrival|dead slow|dead in the "
        "water|dead "
        "to the world|like the dead|dead ringer|im dead|dead last|dead wrong|dead serious|dead "
        "set|dead of night|dead of winter|dead quiet|drop dead|dead sure|dead spot|dead heat|dead "
        "early|dead easy|half - day|half - days|one and a half times|a half times|time and a "
        "half|times and a "
        "half|the scratch|scratch that is|a scratch|scratch on|plus taxi|taxi time|taxi out|taxi "
        "in|not counting taxi|not counting taxiing|no taxi "
        "time|my pulse|his pulse|her pulse|pulse is|pulse of|pulse ox|pulse oximeter|pulse "
        "rate|heart "
        "rate|figure it out|figure it out for|figure that out|figure out|figured out|work it "
        "out|work it "
        "out for|night nurse|full price|full flow|"
        "full day|full night|full speed|full hour|full hours|full blast|full house|full size|"
        "full refund|full name|full minutes|full days|dead end|dead line|dead zone|dead tired|"
        "half the time|half the day|half the way|half the drive|half the flight|half the trip|half "
        "price|half off|half mile|half asleep|traffic light|light snow|light jacket|"
        "second floor|second opinion|first floor|third floor|first time|at first|empty stomach|"
        "flat tire|flat ground|flat road|flat land|flat trail|flat walk|flat fee|flat rate|flat "
        "part|"
        "flat path|flat route|flat out|cut in half|split in half|broke in half|broken in half|fold "
        "in half|snapped in half|full tank of gas|gas tank|tank of gas|better half|"
        "knocked the lights out|lights went out|lights are out|first aid|power steering|"
        "second hand|any minute|this minute|first class|in a minute|one second|a second ago|"
        "at all|all day|all along|after all|not at all|once in a while|one user|battery life|"
        "good morning|good evening|good afternoon|good night|day after tomorrow|kitchen "
        "light|porch "
        "light|light bulb|last minute|in the first place"),
    ROW(ITEM_USE, 0,
        "goes by|go by|had me at|had me on|had him at|had him on|had her at|had her on|has me set "
        "at|running "
        "a|im a|hes a|shes a|prescription is|script is|rx is|ordered at|order is|order is "
        "for|"
        "prescribed at|prescribed for|has me on|has me at|has him on|has her on|puts me on|put me "
        "on|"
        "put him on|put her on|i use|uses|use|he uses|she uses|we use|im using|runs|run|running|im "
        "prescribed|"
        "prescribed|hes running|shes running|i run|i run it"),
    /* ---- units and what is only counted ------------------------------------------------------ */
    ROW(ITEM_UNIT, UNIT_PERCENT,
        "purse sent|purse cent|per sent|per scent|purse scent|purcent|%|percent|pct|per "
        "cent|percentage|prcent|precent|% charge|"
        "percent charge|% charged|percent charged|% full|percent full|"
        "% battery|percent battery|% left|percent left"),
    ROW(ITEM_UNIT, UNIT_MINUTE,
        "min|mins|minute|minutes|minuts|minit|minits|more minutes|more min"),
    ROW(ITEM_UNIT, UNIT_HOUR,
        "h|hr|hrs|hour|hours|hour s|hous|hors|huors|houres|more hours|more hrs|full hours|"
        "whole hours|straight hours|solid hours|good hours"),
    OWN(ITEM_UNIT, UNIT_MINUTE, "m"),
    ROW(ITEM_UNIT, UNIT_DAY, "day|days"),
    ROW(ITEM_UNIT, UNIT_PSI, "psi|psig|p s i"),
    ROW(ITEM_UNIT, UNIT_BAR, "bar|bars"),
    ROW(ITEM_UNIT, UNIT_FLOW,
        "lpm|litrs|l / min|l / m|liter|liters|litre|litres|l|liters a minute|liters per minute|"
        "liter a minute|liter per minute|litre a minute|litre per minute|litre / min|l a minute|l "
        "per minute|l p m|liters / min|lt|lts|"
        "litres a minute|litres per minute|l a min|l per min|liters a min|liters per min|ltr"),
    ROW(ITEM_UNIT, UNIT_FEET, "ft|feet|foot|ft up|feet up"),
    ROW(ITEM_UNIT, UNIT_METER, "meters|metres|meter|mtrs"),
    ROW(ITEM_UNIT, UNIT_MILE, "mile|miles"),
    OWN(ITEM_UNIT, UNIT_MILE, "mi"),
    ROW(ITEM_UNIT, UNIT_KM, "km|kms|kilometers|kilometres|kilometer"),
    ROW(ITEM_UNIT, UNIT_MPH,
        "mph|mile an hour|mile per hour|miles an hour|miles per hour|mi an hour|miles / hour|mi / "
        "h"),
    ROW(ITEM_UNIT, UNIT_PER_HOUR, "per hour"),
    ROW(ITEM_UNIT, UNIT_KMH,
        "kmh|kph|km / h|km an hour|km per hour|kilometers an hour|"
        "kilometers per hour|kmph"),
    ROW(ITEM_UNIT, UNIT_FAHRENHEIT,
        "f|fahrenheit|degrees f|degrees fahrenheit|degree f|° f|"
        "deg f|degrees farenheit|farenheit"),
    ROW(ITEM_UNIT, UNIT_CELSIUS,
        "c|celsius|degrees c|degrees celsius|degree c|° c|deg c|"
        "centigrade|degrees centigrade"),
    ROW(ITEM_UNIT, UNIT_DEGREE, "degrees|degree|°|deg"),
    ROW(ITEM_UNIT, UNIT_BELOW_ZERO, "below|below zero|degrees below|degrees below zero"),
    ROW(ITEM_UNIT, UNIT_POUND, "lb|lbs|pounds|pound"),
    ROW(ITEM_UNIT, UNIT_OTHER,
        "mg|mgs|mcg|ml|milligrams|years|yrs|year|yr|yo|year old|years old|y o|yr old|yrs old|"
        "dollars|bucks|usd|cents|volt|volts|v|watt|watts|wh|amp|amps|cell|cells|people|persons|"
        "kids|grandkids|passengers|adults|nights|night|weeks|week|months|month|times|floors|"
        "stairs|steps|th|st|nd|rd|oz|kg|kilos|mah|ah|inch|inches|pills|pill|tablets|bags|seats|"
        "am flight|stops|bpm|breaths|beats|guests|users|of us|stories|story|lanes|dogs|cats|"
        "units|rooms|beds|flights of stairs|gallons|gal|mpg|stars|points|rooms|holes|innings|"
        "quarters of play|laps|rounds|songs|miles already|k race|am class|flights up|siblings|"
        "puffs|doses|bites|meals|hertz|hz|decibels|db|pm class|hour drive back then"),
    ROW(ITEM_NAMED, 0,
        "in unit|unit no|room|rm|suite|ste|apt|apartment|unit number|gate|seat|row|flight "
        "number|flight no|flight #|"
        "hwy|highway|route|rt|rte|interstate|exit|bus number|train number|number|no "
        ".|bldg|building|"
        "pager|ext|extension|cabin|lot|site|floor|page|chapter|model|order number|"
        "ticket|ticket number|invoice|rental number|confirmation|code|pin|zip|aisle|"
        "terminal|platform|track|lane|lane number|county road|cr|mile marker|age|aged|channel|"
        "version|zone|locker|dock|pier|ward|station|house number|serial|"
        "street|trail|trail number|camp site|campsite|spot|bay|state road|sr|table|"
        "interstate number|my number is|#|phone|psalm|"
        "hymn|jersey|jersey number|shirt|born in|class of|lap|hole|inning|question|stage|party "
        "of|group of|family of|table for|jan|january|feb|february|march|april|june|july|"
        "august|aug|september|sept|october|oct|november|nov|december|dec|dated"),
    ROW(ITEM_PRICE, 0,
        "$|paid|paying|costs|cost|cost me|pay|charged me|fee|fee was|fee is|fee of|"
        "price is|price was|rent is|rental is|deposit|deposit of|deposit was|"
        "bag fee was|owe|for only $|worth|spent"),
    ROW(ITEM_DOOR, 0,
        "from the house to the hotel|from our house to the hotel|counting the taxi|counting the "
        "cab|with the taxi and all|with taxis and all|including the drive|counting the "
        "drive|counting airports|with the airport and all|the whole travel day|whole travel "
        "day|door to door|house to house|home to hotel|all in all|portal to portal|"
        "whole trip is|total travel|travel day|hotel to hotel"),
    ROW(ITEM_CLAIM, 0,
        "lasted|it lasted|battery lasted|lasted me|old machine did|old one did|old unit "
        "did|machine did|last one did|old one lasted|used to "
        "get|"
        "used to last|last year it lasted|last time it lasted|old one went|neighbors lasts|"
        "somebody said|someone said|heard it lasts|heard they last|reads online|thought it was|"
        "ours lasted|his did|hers did|theirs lasts|the other company|other company said|"
        "i used to get|website says|site says|friend says|neighbor says|manual says|brochure "
        "says|she gets|"
        "he gets|they say|they said|box says|you said|you told me|ad says|booklet says|"
        "supposed to last|was told|sign said|sister says|brother says|your site says|rep said|"
        "advertised|claims|rated for|hers lasts|his lasts|online says|salesman said|papers say|"
        "only lasts|only lasted|only last|lasts only|only goes|only gives|only gives me|"
        "only runs|only ran|guy said|supposedly|people say|review "
        "said|reviews say|the book says|i read"),
};

const size_t lexicon_en_count = sizeof lexicon_en / sizeof lexicon_en[0];
