/* What is asked, in English: see lexicon.h. */
#include "lexicon.h"

const char *const cues_en[CUE_COUNT] = {
    [CUE_WATCH] =
        "wake up call|wakeup call|wake up text|will you text|would you text|you can text|you could "
        "text|can "
        "you message|could you message|can you ping|could you ping|can you alert|could you "
        "alert|can you "
        "warn|could you warn|can you buzz|could you buzz|need a text|need a heads|want a text|want "
        "an "
        "alert|want a warning|want a heads|like a text|like a warning|like a heads|like an alert|"
        "alarm me|prompt me|page me|message when|text when|msg me|msg when|could you text|can you "
        "text|please text|pls "
        "text|text my|text him|text her|text our|shout at me|yell at me|holler at|beep me|ring "
        "me|call me at|call me when|remind me|remind my|remind him|remind her|remind the|remind "
        "both|reminder|remind us|tell me to|tell us to|send a text|send me an alert|send an "
        "alert|send me a|"
        "text at|alarm at|alarm for|text me in|text us in|wake us|set alarm|set a timer|text me "
        "when|text me at|text me before|text me if|buzz me|"
        "ping me|alert me|warn me|warn us|nudge me|wake me|notify me|heads up|poke me|"
        "set an alarm|give me a shout|give me a warning|minutes warning|min warning|"
        "minute warning|hour warning|hours warning|tell me when|tell me before|tell me * before|"
        "let me know when * left|let me know * before|let me know at|let me know before|"
        "message me when|message me at|message me * before|text me * before|message me before|"
        "shoot me a text|send me a text|send me a message|drop me a text|text us when|"
        "let me know when it|let me know when im|holler when|tell me at|can you remind|"
        "shout when|give me * notice|holler at me|ping us|let me know when theres|"
        "let me know when there|text me * minutes|let me know when * down|tell me * minutes|"
        "shoot me a message|drop me a line|send a reminder|warning when",
    [CUE_CYLINDER] = "tank|tanks|cylinder|cylinders|oxygen bottle|the bottle|bottle|psi|psig|cyl|"
                     "conserver|regulator",
    [CUE_CHARGING] =
        "what will it read|what would it read|what will they read|what gain|how much will it gain|"
        "how much would it gain|how much do i gain|how much will i gain|time enough to charge|"
        "plug in for|plugged in for|plug it in for|plug them in for|is it full|time is it full|are "
        "they full|to charge|charge up|charge it|charge them|charge "
        "em|charge both|charge all|charge these|"
        "charge my|charge the|charge one|charge two|charge three|charge 1|charge 2|"
        "charge 3|charge 4|charge in|charge within|need * full|be ready|charge at|charge by|charge "
        "before|charge til|charge till|charge until|charge from|"
        "charging|recharge|recharged|recharging|be charged|get charged|get * charged|battery "
        "charged|batteries charged|charged on|charged in|charged while|charged at|get them charged|"
        "get it charged|get em charged|need em * charged|need them * charged|need it * charged|"
        "need both * charged|need all * charged|fully charged by|charged by|charged before|"
        "charged til|charged until|charged in time|be full|be fully charged|all be full|"
        "both be full|get full|get to full|make it to full|until full|till full|til full|"
        "til its full|till its full|until its full|when its full|before its full|time its full|"
        "long its full|when theyre full|before theyre full|time theyre full|until theyre full|til "
        "theyre full|"
        "till theyre full|full by|full before|full again|full in time|when is it full|"
        "when are they full|to full|to 100|to 80|hit 100|hits 100|reach 100|reaches 100|hit 80|hit "
        "full|until its charged|til its charged|"
        "till its charged|until charged|til charged|till charged|top off|top it off|top them off|"
        "top up|be topped off|all full by|charge while|done by|be ready by|finish charging|"
        "on the charger|to fill|fill up|til 80|till 80|until 80|up to 80|til 100|till 100|"
        "until 100|til 90|to 90|will they charge|will it charge|does it charge|when will * full|"
        "want * full|want it full|want them full|are all charged|all are charged|all charged by|"
        "where will they be|where will it be|what will they be at|what will they get to|how far "
        "will they get|"
        "how far up|for a full charge|full when ?|charged when ?|charge overnight|charges|be done "
        "charging|to get * full|how full will|how full would|how "
        "full can|how full by|how full should|how full when|be at 100|be at 80|"
        "have after|charge 5|charge 6|charge back|full charge by|full charge before|"
        "when done|they be done|it be done|they done|be finished|finish|done charging|percent by|"
        "% by|ready by|all ready|they ready|be all set|charge time|charge to|i plug "
        "in|plug in at|when "
        "are they done|when is it "
        "done|when will it be done|"
        "will it be at|gonna be at|what will it be|battery take|batteries take|are they done|"
        "it done by|they done by|plug them in at|plug it in at|what will i have after|"
        "what do i have after|finished charging|get a full charge|have them full|have it full|"
        "have both full|have all * full|have them all full|til it is full|until it is full|"
        "till they are full|until they are full|to be full|fully charged before|be topped up|"
        "charged for|juice up|juiced up|back to full|all the way up|full if i plug|"
        "plug it in now|plug them in now|if i plug|charged up by|charged up before|to a full "
        "charge",
    [CUE_FLIGHT] =
        "gate 2 gate|hops|"
        "time zone|time zones|hour earlier there|hours earlier there|hour later there|"
        "hours later there|gain an hour|lose an hour|gain * hours|lose * hours|time difference|"
        "land|same zone|airborne|taxiing|taxi out|block to block|connecting|lands|land at|landing "
        "at|lands "
        "at|touches down|takes "
        "off|takeoff|"
        "flight|flights|flite|flites|fly|flying|plane|airplane|airline|airlines|gate to gate|in "
        "the air|"
        "layover|layovers|air time|airtime|wheels up|to board|can i board|boarding|block time|"
        "flying time|stopover|nonstop",
    [CUE_ON_PLANE] = "on the plane|on a plane|on the flight|im flying|in flight|mid flight|"
                     "up in the air|on board|in my seat|on plane|in the plane",
    [CUE_TRIP] =
        "heading over|heading to|headed to|headed over|on my way|on our way|off to|going "
        "over|going out|"
        "trip|drive|driving|road trip|outing|hike|hiking|ride|walk to|day out|errands|excursion|"
        "be out|out and about|on the road|get us the|get me the|make the drive|make the trip|"
        "tour|ferry|go to|going to|gone for|be gone|bus|train|shuttle|picnic|there and back|"
        "travel|traveling|get to|get there|day trip|the way to|cruise|zoo|shopping|visit",
    [CUE_GENERAL] =
        "whats normal|what is normal|normal for|normal run|normal "
        "life|typically|usually|generally|normally|in general|on average|as a rule|average|"
        "supposed to last|supposed to do|supposed to run|supposed to go|sposed to last|"
        "sposed to do|expect|battery life|typical|usual|in theory|generally speaking|rule of thumb|"
        "per battery|each battery last|runtime|run time",
    [CUE_LIFE] =
        "last|lasts|give you|give me|go on|good for|run on|run for|goes on|battery life|"
        "hours wise|do i get|do you get|get from|get out of|get on|really do|i get|run|runs|"
        "how long is|be good for|does * do|what does * do|go while|worth",
    [CUE_LEFT] =
        "hold until|hold til|hold till|until then|til then|till then|"
        "til it stops|till it stops|until it stops|before it stops|til it quits|until it quits|"
        "before it quits|gives out|cuts out|goes dead|left|remaining|much longer|much more|how "
        "much more|do i have|do we have|does he have|"
        "does she have|have i got|have we got|has he got|has she got|hold out|till im|til im|"
        "long i got|long ive got|time i got|time ive got|until im|runs out|run out|ran out|before "
        "it dies|till it dies|til it dies|until it dies|"
        "right now|so far|will i make it|make it till|make it until|make it til|last till|"
        "last until|last til|do i got|how long now|time do i|am i good|keep me going|"
        "it going to last|still good|before im out|until its dead|til its dead|till its dead|"
        "now how long|how long have|how long for us|what do i have|what have i got|hours do i have|"
        "long am i good|when does it|what time will|from here|what time does",
    [CUE_HOW_LONG] =
        "how long|how many more hours|how many more hrs|how much more time|how many more "
        "minutes|hours can i|"
        "hours more|how much longer|how much time|how many hours|how many hrs|how many minutes|"
        "hours left|time left|hrs left|will it last|will they last|what time do|what time does|"
        "what time will|how much more|will this last|in minutes|in hours|how late|how far|"
        "hours is that|hours total|time is that|enough to|how mch|how lng|hrs|how long",
    [CUE_HOW_MANY] = "how many batteries|how many batts|how many packs|how many do i need|"
                     "how many should|how many spares|how many battery|how many to bring|"
                     "how many do we need|how many more batteries|how many bats|how many would|"
                     "how many will|number of batteries|how many extra|how many",
    [CUE_ENOUGH] =
        "enough|enuf|enuff|make it|do it|ok|okay|do i make|sufficient|suffice|alright|cut "
        "it|works|work|"
        "get us|get me|get there|can i do|will i be|do i get there|good to go|cover|cover it|"
        "is that good|does that|doable|will that|am i covered|am i set|run out|run short|"
        "fall short|last the|last that|last us|last me",
    [CUE_BATTERY_ASKED] =
        "asking about the batteries|asking about the battery|about the batteries|"
        "how long * batteries|how long * battery|asking about my batteries|"
        "question is * batteries|question is * battery|talking about the batteries",
    [CUE_READY_UNTIMED] =
        "before we leave|before i leave|before we head|before i head|before we go|before i go|"
        "by the time we|by the time i|in time|before the trip|before the drive|before our flight|"
        "before my flight|before the flight|before he leaves|before she leaves|before bed|"
        "before we set|before checkout|before breakfast|before dinner|before church|"
        "before my appointment|before the appointment|before my ride|before the bus|by morning|by "
        "lunch|by dinner|by breakfast|by bedtime|before lunch|by supper|by lunchtime|"
        "by dinnertime|before they come|before the ride|"
        "before we take off|by the time he|by the time she|before the shuttle|before they",
    [CUE_CONSERVER] = "conserver|conserving|pulse regulator|conserving regulator|"
                      "conserving device|demand valve",
};
