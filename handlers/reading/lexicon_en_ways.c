/* English, times, ways and power: see lexicon.h. */
#include "lexicon_rows.h"

const struct lexicon_entry lexicon_en_ways[] = {
    /* ---- times ------------------------------------------------------------------------------- */
    ROW(ITEM_AM, 0, "am|a . m .|a . m|a m|in the am"),
    ROW(ITEM_PM, 0, "pm|p . m .|p . m|p m|in the pm"),
    OWN(ITEM_AM, 0, "in the morning|this morning"),
    ROW(ITEM_DAYPART, DAYPART_MORNING, "morning"),
    ROW(ITEM_DAYPART, DAYPART_AFTERNOON, "afternoon|in the afternoon|this afternoon"),
    ROW(ITEM_DAYPART, DAYPART_EVENING, "evening|in the evening|this evening"),
    ROW(ITEM_DAYPART, DAYPART_NIGHT, "at night|night time|nighttime|in the night"),
    ROW(ITEM_NOON, 720, "noon|midday|noontime|high noon"),
    ROW(ITEM_NOON, 0, "midnight|midnite"),
    ROW(ITEM_OCLOCK, 0,
        "oclock|o clock|sharp|on the dot|local time|their time|our time|there time|local"),
    ROW(ITEM_PAST, 0, "past|after"),
    ROW(ITEM_TO_HOUR, 0, "to|til|till|before|of|shy of"),
    ROW(ITEM_CLOCK_LEAD, 0, "at exactly"),
    ROW(ITEM_DAY, DAY_TODAY, "today"),
    ROW(ITEM_DAY, DAY_TOMORROW,
        "tomorrow|tmrw|tomorow|tommorow|tommorrow|tmw|tmr|2 moro|2 morrow|"
        "tomorro|tom morning"),
    ROW(ITEM_DAY, DAY_MONDAY, "monday|mon"),
    ROW(ITEM_DAY, DAY_TUESDAY, "tuesday|tues|tue"),
    ROW(ITEM_DAY, DAY_WEDNESDAY, "wednesday|weds"),
    ROW(ITEM_DAY, DAY_THURSDAY, "thursday|thurs|thur|thu"),
    ROW(ITEM_DAY, DAY_FRIDAY, "friday|fri"),
    ROW(ITEM_DAY, DAY_SATURDAY, "saturday"),
    ROW(ITEM_DAY, DAY_SUNDAY, "sunday"),
    OWN(ITEM_DAY, DAY_WEDNESDAY, "wed"),
    OWN(ITEM_DAY, DAY_SATURDAY, "sat"),
    OWN(ITEM_DAY, DAY_SUNDAY, "sun"),
    ROW(ITEM_TONIGHT, 0, "tonight|tonite|2 nite"),
    ROW(ITEM_AGO, 0,
        "into the drive|into our drive|into the ride|into the hike|into our hike|into the "
        "walk|into our walk|into the flight|into the movie|into the game|into the evening|into it "
        "now|into a|into my|into this|in on a|in on my|in on this|ago|earlier|into the day|into "
        "the "
        "trip|into it|into our day|in already|in "
        "now|already|since|so far"),
    ROW(ITEM_AGO_LEAD, 0,
        "it has been|it has been on for|it has been about|its been about|its been on for|its been "
        "on|its been going for|its been going|its been running for|its "
        "been running|been hiking|been hiking for|been walking|been driving|been driving for|been "
        "riding|been riding for|been fishing|been fishing for|been sitting here|been sitting here "
        "for|been here|been here for|been at it|been at it for|been shopping|been shopping "
        "for|been out here|been out here for|for the last|the last|for the past|the past|over the "
        "last|over the past|in the last|past|thats been|its been|been going for|been running "
        "for|been running|been on it for|been on battery for|been on battery|been on batteries "
        "for|been off the wall for|been off the wall|been unplugged for|been unplugged|been out "
        "for|been out|been using it for|been using it|been going|been on for|been on it|been "
        "walking for|been without power for|been without power|been off the charger for|been off "
        "power for|been off the charger|running for|unplugged for|off the charger for|off the wall "
        "for|used|ive used|already used|used about|used up|used for|on battery for|on battery "
        "power for|on it for|used it for|ran it for|ran it|ran for|power has been out for|power "
        "has been out|powers been out for|powers been out|been dark for|no power for|without power "
        "for"),
    ROW(ITEM_SINCE, 0, "since|ever since"),
    ROW(ITEM_NOW, 0,
        "now|right now|at the moment|currently|as of now|at present|rn|just now|"
        "at this moment|this minute|already now|by now|presently"),
    ROW(ITEM_NOW_IS, 0,
        "it is|it is about|it is almost|its now|it is now|its like|its about|now its|now it "
        "is|right now its|its already|time is|"
        "time now is|its almost|its currently|clock says|the time is|currently its|current time|"
        "watch says|my watch says|phone says its|clock reads|my clock says|the clock says|"
        "current time is|now at|its just past|its just after|and its|its|now"),
    ROW(ITEM_EARLIER, 0,
        "yesterday|last night|this morning|yesterday morning|yesterday afternoon|"
        "last week|the other day|the day before|night before|last time|"
        "earlier today|earlier this morning|when i got it|before that|originally|"
        "last evening"),
    ROW(ITEM_WAS, 0,
        "was|were|had|used to be|started|started at|began at|started with|it was|"
        "began|started out at|started off at|was at|were at|filled to|"
        "came with|started the day at|started the day with|i had"),
    ROW(ITEM_THEN_LEFT, 0,
        "lights went off|lights just went off|lights went out|power died|electricity went "
        "off|electricity went out|electric went out|power cut off|breaker tripped|outlet died|left "
        "at|left the|left home|left our|left my|left for|when we left|when i left|when he "
        "left|"
        "when she left|we left|i left|he left|she left|left the plug|left the wall|left the outlet|"
        "pulled it|pulled it off|yanked it|unplugged|unplugged it|took "
        "it off|came off|came off the charger|came off the wall|"
        "took it off the charger|pulled it off|off the charger|pulled the plug|disconnected|"
        "went on battery|switched to battery|been on battery since|on battery since|"
        "running since|been running since|went out|power went out|power went off|power quit|"
        "lost power|got off the charger|swapped it in|put it in|switched it on|turned it on|"
        "fired it up|unhooked|set out|we started|i started|started out|started walking|"
        "started driving|off the wall|off the wall since|took off the charger|checked it|i checked|"
        "looked at it|off charge|off the plug|checked|last checked|when i checked"),
    ROW(ITEM_DEPART, 0,
        "out at|off at|goes out|goes out at|leave|leave at|leaves|leaving|leaving "
        "at|depart|departs|departing|departure|takes off|"
        "take off|takeoff|taking off|head out|heading out|heads out|roll out|set off|setting off|"
        "hit the road|go time|out the door|pick me up|picks me up|picking me up|pulls out|start at|"
        "we start|get going|gotta go|have to go|gotta leave|leaving here|start|"
        "pickup|pick up|wheels up|sets out|out of here|leaving the house|leave the house|"
        "picks us up|pick us up|picking us up|picks him up|picks her up|leave for|leave here|leave "
        "home|leaves at|we go|i go|we ride|walk out|driving out|"
        "head off|heading off|checkout|check out|checking out|ride comes|ride is|shuttle is|bus "
        "is|flight is at|"
        "flight at|go out|going out|bus leaves|starts|roll"),
    ROW(ITEM_ARRIVE, 0,
        "got home|got here|got back|got in|arrived|back|back at|back by|back "
        "home|return|returns|returning|get back|come back|be back|arrive|"
        "arrives|arriving|arrival|get there|gets there|gets in|get in|land|lands|landing|get home|"
        "getting back|getting home|be home|home by|home at|home|coming back|back around|touches "
        "down|touch down|lands at|arrives at|pulls in|done at|done by|in at|ends|ends at|over "
        "at|finishes|gets out|lets out|wraps up|ending at|done around"),
    ROW(ITEM_BY, 0, "by|before|no later than|in time for|ready for|ready at|ready by|done by|for"),
    ROW(ITEM_UNTIL, 0,
        "alarm goes at|alarm goes off at|alarm is set for|until|till|til|to last to|to last "
        "until|through|thru|up until|up till|"
        "get to|to get to|make it past|get past|hold until|hold till|go until|go till|make it "
        "to|make it "
        "till|make it until|make it til|get me to|last to|lasts to|"
        "carry him to|carry her to|carry us to|get him to|get her to|take me to|take us to|take "
        "him to|"
        "take her to|see me to|see him to|last him to|last her to|last us to|last me to|last me "
        "til|last "
        "me till|last me until|get me til|get me till|get me until|keep me going til|keep me going "
        "till|keep me going until|hold out til|hold out till|hold out until|hang on til|hang on "
        "till|hang "
        "on until|hold me til|hold me till|hold me until|tide me over til|tide me over till|tide "
        "me over "
        "until|"
        "last through|get us to|carry me to|to make it to"),
    ROW(ITEM_BEFORE, 0,
        "before|before its|before it is|before theyre|before they|before i|before "
        "we|warning|notice|heads up|prior|ahead|beforehand|before it|out|early|"
        "to spare"),
    ROW(ITEM_EVENT, 0,
        "starting at|show|show starts|show is|appointment|appt|appt is|appointment "
        "is|dinner|lunch|breakfast|"
        "church|mass|movie|meeting|wedding|class|concert|game|ceremony|service|party|checkup|"
        "doctor|dr|dentist|visit|reservation|play|bingo|funeral|performance|recital|surgery|"
        "graduation|banquet|reception|event|procedure|seminar|opens|closes|closes at|kickoff|"
        "dinners|appts|dinners at|games at|lunch is|lunch at|breakfast at|supper|hair "
        "appointment|session|gets his|gets her|takes his|takes her|he gets his|she gets her|i take "
        "my|my pills|meds at|tee time"),
    ROW(ITEM_REMIND, 0,
        "dont let me forget|do not let me forget|give me a nudge|give us a nudge|give me a "
        "buzz|give me a ping|set me an alarm|wake up "
        "call|wakeup call|will you text|would you text|can you message|could you "
        "message|can you "
        "ping|could you ping|can you alert|could you alert|can you warn|could you warn|"
        "alarm me|prompt me|page me|shout|yell|beep me|ring me|text my|text him|text her|can you "
        "text|could you text|please "
        "text|remind me|reminder|remind|text me|text me when|buzz me|ping me|alert me|alert|warn "
        "me|"
        "warning|tell me|tell me when|let me know|let me know when|message me|nudge me|wake me|"
        "notify me|heads up|set a reminder|send me a text|shoot me a text|send me a message|"
        "give me a heads up|holler|drop me a text|give me a shout|send a reminder|can you remind|"
        "poke me|set an alarm|send me|hit me up|shoot me a message|text us|remind us|tell us"),
    ROW(ITEM_LEFT, 0, "left|remaining|to go|of life|remain|left on it|left in it|left on them"),
    ROW(ITEM_LASTS, 0,
        "last|lasts|lasting|last me|last us|hold out|hold up|keep me going|to get through|"
        "to cover|get me through|get us through|carry me|enough for|good for|last for|"
        "last him|last her|get him through|get her through|for at least|at least|another|last at "
        "least|keep going|make it through|go for|run for|cover|survive|"
        "has to go|must last|do me|do us|stretch|"
        "enough juice for|stay on it|going for"),
    ROW(ITEM_LASTS, 1, "need|needs|need about|i need|we need"),
    ROW(ITEM_GOING, LEG_WAIT, "wait no plug|wait no outlet|wait no outlets|wait no power"),
    ROW(ITEM_POWER, POWER_WORD_NONE, "wait no plug|wait no outlet|wait no outlets|wait no power"),
    ROW(ITEM_CORRECT, 0,
        "no , better|no better|better make it|wait its|wait it is|wait thats|wait make that|wait i "
        "mean|wait actually|, wait ,|. wait "
        ",|. . . "
        "wait|call it|so call it|lets call it|sorry|no wait|wait no|oh wait|wait "
        "sorry|actually|correction|i mean|i "
        "meant|meant|oops|whoops|my bad|"
        "im lying|no im lying|i tell a lie|no i tell a lie|i lie|no i lie|scratch that|make "
        "that|strike that|make it|err|sorry i meant|sorry i mean|typo|"
        "oh sorry|sorry its|i meant to say|meant to say|my fault|ooops|ops|let me "
        "correct|correcting|nope|no sorry|sorry no|my mistake|no actually|well actually|"
        "sorry make that|no make that|or rather|no its|no i mean|no i meant"),
    /* ---- ways and power ------------------------------------------------------------------------
     */
    ROW(ITEM_GOING, LEG_DRIVE,
        "were in the car|we are in the car|im in the car|hes in the car|shes in the car|drive "
        "there and back|ride there and back|drive|driving|drives|car|in the car|by "
        "car|van|truck|jeep|rv|bus|shuttle|train|subway|"
        "taxi|cab|rideshare|coach|ride|car ride|bus ride|train ride|metro|tram|road|road trip|"
        "bus is|ride is|shuttle is|train is|drive is|taxi is|the drive is|"
        "on the road|in the van|on the bus|on the train|in the truck|by bus|by train|to drive|"
        "drive home|drive back|drive there|drive up|drive down|highway|motorcycle|"
        "at the wheel|drive to|drive over|driven|van ride|shuttle ride|motor coach|carpool|suv|"
        "snowmobile|snowmobile tour|snowmobiling|atv|four wheeler|jeep tour|bus tour|van tour|"
        "driving tour|golf cart|hayride|hay ride|wagon ride|carriage ride|side by side|tractor|"
        "paratransit|dial a ride|senior van|medical transport|ambulance|"
        "tour bus|limo|pickup truck|minivan|in the pickup|in his pickup|in my pickup|in our "
        "pickup|minibus|railway|railroad|steam "
        "train|riding|riding in|limousine|in the "
        "limousine|hearse|monorail|vanpool|rideshare|rickshaw|wagon|sleigh ride|horse and "
        "buggy|camper|motorhome|streetcar|light rail|trolley"),
    ROW(ITEM_GOING, LEG_FLIGHT,
        "flight|flights|flite|flites|fly|flying|plane|airplane|on the plane|in the plane|by "
        "plane|jet|"
        "plane ride|on a plane|flight time|plane trip|connecting flight|nonstop|nonstop flight"),
    ROW(ITEM_GOING, LEG_WAIT,
        "fishing pond|at the fishing pond|at the pond|at my desk|at a desk|desk "
        "job|soccer|baseball|"
        "standing|standing around|standing there|waiting around|parked|in "
        "between|doc|doctor|doctors|the doctor|at the lake|on the island|sitting|seated|sitting "
        "around|sitting and "
        "waiting|stuck|wait|waiting|waits|layover|layovers|stopover|lay "
        "over|connection|sit|sitting there|"
        "sitting at the gate|sit at the gate|sitting at the airport|sitting at the "
        "terminal|sitting in the terminal|airport|at the clinic|at the hospital|in the waiting "
        "room|waiting room|at the airport|"
        "lunch stop|at lunch|for lunch|stop|stay|staying|visit|visiting|in court|appointment|"
        "appt|show|church|dinner|movie|movies|concert|game|meeting|at the restaurant|restaurant|"
        "at the office|doctors office|clinic|hospital|wedding|mass|service|class|"
        "at the doctor|at the doctors|party|museum|in line|dialysis|lunch|breakfast|pit stop|"
        "rest stop|sit in|in the lobby|at the beach|picnic|at the park|at the pool|ceremony|"
        "at the mall|hang out|hanging out|in the stands|in the bleachers|theater|theatre|ballgame|"
        "salon|at the salon|dentist|therapy|bingo|the opera|matinee|play|recital|exhibit|"
        "rest|resting|break|a break|graveside|reception|burial|lab|at the "
        "lab|pharmacy|grocery|grocery store|chemo|rehab|"
        "physical therapy|school|birthday party|brunch|supper|coffee|cafe|bbq|barbecue|potluck|"
        "book club|choir|choir practice|rehearsal|senior center|nursing home|zoo|aquarium|fair|"
        "market|mall|auction|parade|fireworks|soccer game|baseball game|football game|"
        "basketball game|ball game|swim meet|graduation|"
        "eat lunch|eating lunch|eat dinner|eating dinner|eating|having lunch|having dinner|"
        "have lunch|have dinner|stop to eat|stop for lunch|stop for gas|gas stop|browsing|"
        "at the store|at the library|library|bank|at the bank|barber|hairdresser|gym|pool|"
        "meetings|appointments|conference|convention|seminar|workshop|lecture|training|treatment|"
        "treatments|infusion|lessons|courthouse|post office|bookstore|buffet|spa|massage|hot "
        "springs|"
        "winery|brewery|festival|rodeo|tournament|overlook|visitor center|banquet hall|bowling|"
        "bowling alley|cards|card game|poker|bridge club|yard sale|estate sale|memorial|memorial "
        "service|"
        "luncheon|reunion|family reunion|baptism|christening|shower|baby shower|open "
        "house|barbershop|"
        "nail salon|optometrist|eye doctor|cardiologist|pulmonologist|lung doctor|x ray|mri|"
        "physical|blood work|blood draw|vet|vets office|"
        "casino|lunch is|dinner is|appt is|appointment is|visit is|show is|movie is|church is|"
        "at my sons|at my daughters|at a friends|at the house|terminal wait|in the terminal"),
    ROW(ITEM_GOING, LEG_HIKE, "back on foot|home on foot"),
    ROW(ITEM_HOMEWARD, 0, "back on foot|home on foot|back on|back to|back at"),
    ROW(ITEM_GOING, LEG_DRIVE,
        "back by car|back by bus|back on the bus|home on the bus|back in the car|home in the car|"
        "back on the train|home on the train|back by train|back in the van|back in the truck"),
    ROW(ITEM_HOMEWARD, 0,
        "back by car|back by bus|back on the bus|home on the bus|back in the car|home in the car|"
        "back on the train|home on the train|back by train|back in the van|back in the truck"),
    ROW(ITEM_GOING, LEG_HIKE,
        "walk there and back|walk|walking|walks|hike|hiking|hikes|on foot|stroll|trail|trek|walk "
        "around|by foot|"
        "walk to|walk back|hike up|hike back|hike down|snowshoe|snowshoeing|walking around|"
        "climb|walking tour|nature walk|strolling|wander|trail walk"),
    ROW(ITEM_GOING, LEG_OTHER,
        "out and about|be out|being out|gone|be gone|ferry|boat|boat ride|boat tour|cruise|"
        "gondola|cable car|shopping|errands|out of the house|outing|out shopping|the boat|"
        "sightseeing|ski lift|chairlift|fishing|be away|kayak|canoe|on the lake|horseback|"
        "bike|bike ride|biking|bike riding|horseback riding|horse riding|riding "
        "horses|golf|golfing|sail|sailing|raft|rafting|garden|yard work|out all|"
        "tour|pontoon|pontoon boat|sailboat|houseboat|ferry ride|paddle boat|boating|horse ride|"
        "out for|door to door trip|running errands|be gone for|be out for"),
    ROW(ITEM_EACH_WAY, 0,
        "before and after|there and back|each way|drive there and back|ride there and back|walk "
        "there and back|one way each|both "
        "ways|there and back each|per leg|each leg|"
        "each direction|either way|up and back each|each flight"),
    ROW(ITEM_SAME_BACK, 0,
        "come right back|comes right back|coming right back|come straight back|go right back|turn "
        "right around|turn around and come back|turn around and drive back|drive right back|same "
        "way back|same back|the same back|same way home|same coming back|same going back|"
        "back the same way|and then the reverse|same in reverse|home the same way|"
        "the same way back|same thing back|same on the way back|same to get home|and back again|"
        "then reverse|in reverse|same drive home|same ride home|same trip home|same walk back|same "
        "walk home|same home|"
        "same time back|same time home|same coming home|same to come back|same for the way back|"
        "same thing home|ditto back|ditto home|ditto on the way back|repeat for the way home|"
        "then the reverse|then reverse it|same the other way|same route back|same route home|"
        "the same home|the same drive back|the same drive home|the same ride back|"
        "the same ride home|the same trip back|the same trip home|the same time back|"
        "home again the same way|back home the same way|return the same way|returning the same way|"
        "back again the same way|same trip back|same drive back|same ride back|the same coming "
        "back|same for the return"),
    ROW(ITEM_HOMEWARD, 0,
        "home again|back|back by|back in|home|to home|return|back home|way back|on the way "
        "back|ride home|"
        "return trip|the way home|coming home|to get home|back again"),
    ROW(ITEM_POWER, POWER_WORD_BATTERY,
        "going cordless|leaving the wall|leaving the plug|leaving the outlet|leave the wall|leave "
        "the "
        "plug|leave "
        "the outlet|leaving the charger|no plug since|no plug since then|no outlet since|no outlet "
        "since then|hasnt been plugged "
        "in|havent plugged in|havent plugged it in|havent been plugged in|not been plugged in|has "
        "not been plugged in|hasnt seen a plug|hasnt seen an outlet|not been on a charger|hasnt "
        "been on the charger|off the plug|away from the wall|away from the plug|away from the "
        "outlet|off the battery|off of the battery|out of the wall|out of the outlet|out of the "
        "socket|off of the "
        "wall|on the battery "
        "now|its on the battery|now on the battery|unplug|went on battery|went on "
        "batteries|unplugged|on battery|on "
        "batteries|on battery power|off battery|"
        "running on battery|off the wall|on battery since|off the charger|left the plug|"
        "left the wall|left the outlet|came off the charger|came off the wall|off the plug|"
        "running on the battery|running off the battery|been running off the battery|been running "
        "off battery|"
        "been running on battery|been running on the battery|going on the battery|on its "
        "battery|went to battery|"
        "switched to battery|pulled the plug|pulled the cord|yanked the plug|yanked the cord|"
        "tripped on the cord|tripped over the cord|off the outlet|not plugged into anything|off "
        "wall "
        "power|"
        "off mains|off the mains|away from a plug|away from any plug|running off battery|"
        "unhooked|took it off the charger|been off the wall|been unplugged|been unplugged for|"
        "been on the battery|been on the batteries|been on her battery|been on his battery|been on "
        "my "
        "battery|been on its battery|been off the wall for|been off the charger|been off the "
        "charger for|unplugged for|"
        "off the charger for|off the wall for|been on battery for|been on battery|"
        "been on batteries for|on battery for|on battery power for|unplugged it|"
        "been on battery since|disconnected|pulled it off the wall|just unplugged"),
    ROW(ITEM_POWER, POWER_WORD_OUT,
        "left my charger|left the charger|forgot my charger|forgot the charger|lost my "
        "charger|lost "
        "the charger|nothing to plug into|power still out|powers still out|power is still "
        "out|still no power|genny off|genny is "
        "off|genny died|genny quit|generator off|by outage|an outage|lines are "
        "down|knocked our power off|knocked our power out|knocked the power out|knocked out the "
        "power|knocked out our power|breaker flipped|flipped the breaker|no juice in the "
        "house|street is dark|block is "
        "dark|house is dark|lights went off|lights just went off|lights are off|lights just went "
        "out|power just "
        "died|power died|electric just went out|the electric is off|electricity went "
        "off|electricity is off|electricity just went off|breaker tripped|tripped the "
        "breaker|breaker popped|power cut off|power blinked out|juice went out|power went "
        "out|power is out|powers out|power just went out|power out|power outage|outage|"
        "generator quit|generator died|generator stopped|generator went out|generator went off|"
        "generator ran out|generator shut off|generator is off|no power|without power|lost "
        "power|power failure|blackout|electricity went out|"
        "electric went out|power has been out for|power has been out|powers been out|"
        "powers been out for|electricity is out|power went off|power is off|power failed|"
        "powers been off since|powers been off for|powers been off|power has been off|power been "
        "off|"
        "power is gone|powers gone|power dropped|power cut out|power got cut|power is down|powers "
        "down|"
        "power quit|knocked the power out|knocked out power|knocked the lights out|"
        "lights went out|lights are out|no electricity|without electricity|without any "
        "power|without lights|been without power for|been dark for|"
        "been without power|power cut|lost electricity|electric is out|no power for|"
        "without power for|electricity just went out|power has gone out|lost the power|"
        "its off again|its out again|went out again|went off again|power off again|gone out again|"
        "line is down|lines are down|took the line down|took out the line|took out the power|took "
        "the power out|"
        "took the lines down|line came down|lines came down|transformer blew|grid is down|grid "
        "went down|"
        "took down the line|took down the lines|power line down|power lines are down|electric went "
        "off|"
        "still no power|the power is gone|power just quit|power just died|brownout"),
    ROW(ITEM_POWER, POWER_WORD_BACK,
        "power is back|power came back|power is back on|"
        "electricity is back|power back on|powers back|power is on again"),
    ROW(ITEM_POWER, POWER_WORD_WALL,
        "wall|the wall|wall plug|wall outlet|wall charger|wall power|into the wall|house outlet|"
        "house current|house power|wall socket|on the wall|plugged into the wall|in the wall|"
        "plugged in the wall|outlet in the wall|hotel outlet|home outlet|regular outlet|ac power|"
        "ac outlet|ac adapter|ac|wall unit|plugged in at home|plugged in at the house|"
        "plugged in at the hotel|off the wall outlet|wall adapter|wall current|kitchen outlet|"
        "the mains|on the mains|mains power|mains socket|household outlet|home charger|plugged in "
        "to the wall|at the wall|on wall power|"
        "plug in the wall|a plug in the wall|bedroom outlet|standard outlet|from the wall|"
        "hooked to the wall|normal outlet"),
    ROW(ITEM_POWER, POWER_WORD_CAR,
        "truck socket|truck plug|truck outlet|van socket|van plug|van outlet|jeep plug|jeep "
        "socket|rv plug|rv socket|suv plug|vehicle plug|vehicle socket|off the dash|dash plug|dash "
        "outlet|lighter|in the lighter|the lighter|cord in the "
        "lighter|car charger|car adapter|car "
        "plug|car socket|car power|car outlet|plugged in the car|"
        "plugged into the car|plugged in to the car|in the car plug|12 volt|12 v|12 v|cigarette "
        "lighter|"
        "lighter socket|lighter plug|dc charger|dc adapter|dc cord|car cord|vehicle charger|"
        "truck charger|car only|only the car|only in the car|just the car|just in the car|only got "
        "the car|"
        "off the car|off the truck|off the van|off the rv|off the jeep|off the suv|"
        "off the camper|off of the car|off of the truck|off the cigarette lighter|off the lighter|"
        "from the lighter|off the 12 volt|on the 12 volt|on the lighter|plugged into the "
        "van|plugged into the truck|plugged in to it|"
        "plugged into it|on the car charger|in the car charger|auto adapter|vehicle outlet|"
        "hooked to the truck|hooked to the car|hooked to the van|hooked up to the truck|hooked up "
        "to "
        "the van|hooked into the truck|hooked into the car|charging in the car|charges in the "
        "car|charge in the car|hooked up to the car|"
        "plugged in to the van|plugged in to the truck|charging from the car|charge from the car|"
        "power from the car|runs from the car|running from the car|charging off the car|"
        "cig lighter|car lighter|rv outlet|on car power|plugged into the rv|plugged in the van|"
        "plugged in the truck|plugged into the jeep|trucks 12 volt|cars 12 volt|vans 12 volt|"
        "12 volt plug|12 volt socket|12 volt outlet|12 v plug|12 v socket|12 v outlet|"
        "the car has a plug|on the dc cord|with the dc cord|adapter in the car|power in the car|"
        "on the cars outlet|plug in the car|outlet in the car|charger in the car|its car charger|"
        "plugs into the car|plug it in the car|plug into the car|plugged into the dash|"
        "cars outlet|cars plug|cars charger|vans outlet|trucks outlet|dash outlet"),
    ROW(ITEM_POWER, POWER_WORD_PLUG,
        "with the cord|on the cord|with a cord|with cord|cord in|adapter|the adapter|an "
        "adapter|dc|power cord|the cord|plugged in|plug|outlet|an "
        "outlet|outlets|a plug|plugs|with power|has power|have power|"
        "plugged in whole way|on the charger|charger|on charge|socket|can plug in|able to plug in|"
        "i can plug in|where i can plug in|plug in|plugged back in|power available|powered|"
        "there is power|hooked up|plugging in|power there|plugged"),
    ROW(ITEM_POWER, POWER_WORD_NONE,
        "no outlets|no outlet|no plug|no plugs|no power there|without an outlet|without outlets|"
        "not plugged in|no car power|no car charger|without power there|cant plug in|"
        "nothing to plug into|nowhere to plug in|no charger|no charging|no place to plug in|"
        "without a plug|no power on it|no outlet on it|no power on the way|no plug in|seat power|"
        "no outlets anywhere|no plugs anywhere|no wall plug|no wall outlet|off grid|"
        "w / o power|w / o outlet|no power in the car|no car adapter|no car plug|no usb|"
        "no where to plug in|plugs dont work|outlet doesnt work|outlets dont work|no car outlet|"
        "not charging|no power anywhere|power at the seat|seat outlet|outlet at the seat|"
        "plug at the seat|plug at my seat|outlet at my seat|outlets at the seat|outlets at the "
        "seats|plugs at the seats|no power source|no place to charge|"
        "nowhere to charge|no idea bout plugs|no idea about plugs|outlet is broken|unplugged there|"
        "not sure about outlets|dont know if theres a plug|no electricity there|no charging there|"
        "without plugging in|no socket|no sockets|no chance to plug in|no way to charge|"
        "no way to plug in|usb"),
    ROW(ITEM_ACTIVITY, ACTIVITY_SLEEP,
        "nap time|naptime|taking a nap|sleep|sleeping|asleep|in bed|going to bed|overnight|all "
        "night|through the night|"
        "thru the night|until morning|till morning|while i sleep|napping|nap|the whole night|"
        "snoozing|snoring|snores|dozing|dozing off|dozed off|passed out|out cold|slumbering|going "
        "to sleep|sleeps|to bed|til morning|in the bed"),
    ROW(ITEM_ACTIVITY, ACTIVITY_WALKING,
        "doing laps|walking laps|into the hike|into our hike|into the walk|into our walk|been "
        "hiking|been hiking for|been "
        "walking|on my feet|on her feet|on his feet|up and "
        "about|walk|walking|walks|hiking|hike|hikes|on "
        "foot|strolling|stroll|walking around|"
        "been walking for|out walking|trek|trekking|snowshoeing|wander|wandering|walking about"),
    ROW(ITEM_ACTIVITY, ACTIVITY_COUNT,
        "were in the car|we are in the car|im in the car|hes in the car|shes in the car|been "
        "driving|been riding|been riding for|into the drive|into our drive|into the ride|on "
        "the highway|on the freeway|on the interstate|cruising along|im driving|im the "
        "driver|the one driving|driving|been driving for|at the wheel|on the road|riding in the "
        "car|drive|road "
        "trip|"
        "riding|behind the wheel"),
    ROW(ITEM_ACTIVITY, ACTIVITY_FLIGHT,
        "flying|on the plane|in flight|on a flight|on the flight|fly|flight|plane|on a plane|"
        "airplane|in the plane|mid flight"),
    ROW(ITEM_ACTIVITY, ACTIVITY_REST,
        "been sitting here|been sitting here for|resting|at rest|sitting|seated|sitting down|lying "
        "down|laying down|couch|sofa|recliner|"
        "sitting still|watching tv|in my chair|in his chair|in her chair|in the chair|in my "
        "rocker|in the rocker|in her rocker|in his rocker|in my easy chair|in his recliner|"
        "in her recliner|in the recliner|on the couch|on the sofa|in front of the tv|watching the "
        "game|"
        "watching a movie|watching a show|watching television|kicked back|put my feet up|feet up|"
        "in a chair|sitting on|reading a book|lounging|"
        "when sit|when i sit|when he sits|when she sits|while i sit|while he sits|while she sits|"
        "he sit|she sit|he sits|she sits|i sit|i just sit|just sit|when i rest|when he rests|"
        "when she rests|in my recliner|sitting around|not moving|taking it "
        "easy|relaxing|armchair|rocking chair|"
        "on the bench|on a bench|sitting in|sit still|wide awake|awake|chair|chairs|knitting|just "
        "sitting"),
    /* ---- cylinder and flight -------------------------------------------------------------------
     */
    ROW(ITEM_CYLINDER, 0,
        "tank|tanks|cylinder|cylinders|bottle|bottles|oxygen bottle|cyl|"
        "oxygen tank|o2 tank|o2 bottle|backup tank|backup cylinder|regulator|"
        "tank gauge"),
    ROW(ITEM_SIZE, 0, "size|sized"),
    ROW(ITEM_GATE, 0,
        "gate time to gate time|gate to gate|block time|block to block|gate - to - gate|gate 2 "
        "gate|gate to gate times|gate to gate time|scheduled block|from gate to gate|maximum "
        "duration|max flight duration|taxi included|including taxi|pushback to gate"),
    ROW(ITEM_GATE, 2,
        "out of the gate|into the gate|leaves the gate|leave the gate|leaving the gate|pushes "
        "back|pushes back from the gate|off "
        "the gate|at the gate there|at the gate on the other end"),
    ROW(ITEM_DEPART, 0,
        "out of the gate|leaves the gate|leave the gate|leaving the gate|pushes back|pushes back "
        "from the gate|off "
        "the gate"),
    ROW(ITEM_ARRIVE, 0, "into the gate|at the gate there|at the gate on the other end"),
    ROW(ITEM_GATE, 1,
        "per my itinerary|per the itinerary|per my ticket|according to my ticket|according to the "
        "ticket|according to my itinerary|according to the itinerary|per my booking|itinerary "
        "has|itinerary has us|ticket has us|booking has us|booking says|booking "
        "shows|per the booking|on the booking|reservation says|boarding pass "
        ":|ticket :|itinerary :|boarding pass has|off the boarding pass|off my "
        "ticket|off the ticket|off the itinerary|airline printout|printed itinerary|from the "
        "airlines page|from the airlines site|on the airlines page|on the airline page|off the "
        "airlines page|airlines page|ticket says|ticket shows|ticket has|my ticket says|my ticket "
        "shows|on the ticket|on my "
        "ticket|per the ticket|boarding pass says|boarding pass shows|on the boarding pass|on my "
        "boarding pass|itinerary says|itinerary shows|on the itinerary|on my itinerary|"
        "airline|airlines|per airline|by the airline|airline schedule|airlines schedule|airline "
        "sent|airlines website|airlines site|airlines app|airline app|airline lists it as|airline "
        "shows|airline has|airlines has|the airline|airlines figure|airline says|airline told "
        "me|airline told us|airline lists it|"
        "airline quotes|airlines number|airline gave|per the airline|airline figure|"
        "according to the airline|airline said|airlines time|the airlines say|airline has it|"
        "airline lists|airline quoted|airline puts it at|airline has it at|from the airline|"
        "airline is saying|airline gave me|airline tells me|airline website says"),
    ROW(ITEM_AIR, 0,
        "actually flying|actually in the air|in the air|air time|airtime|wheels up to wheels "
        "down|flying time|time in air|"
        "in air|actual air time|takeoff to landing|airborne|wheels up to touchdown|"
        "actual flying|of flying|time aloft|up in the air|takeoff to touchdown|"
        "time in the air|actual flying time|off to on|without taxi|without the taxi"),
    ROW(ITEM_BEHIND, 0,
        "behind|behind ours|behind us|earlier there|hours earlier|behind here|"
        "hour earlier|earlier than here|earlier than us|earlier than ours|back there"),
    ROW(ITEM_AHEAD, 0,
        "later|ahead|ahead of ours|ahead of us|later there|hours later|ahead of here|"
        "forward|later than here|later than us|hour later|later than ours"),
};

const size_t lexicon_en_ways_count = sizeof lexicon_en_ways / sizeof lexicon_en_ways[0];
