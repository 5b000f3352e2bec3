/* Spanish: see lexicon.h. */
#include "lexicon_rows.h"

const struct lexicon_entry lexicon_es[] = {
    /* ---- little words -------------------------------------------------------------------- */
    OWN(ITEM_LINK, 0,
        "es|esta|estan|estaba|estaban|son|era|eran|la|el|lo|las|los|de|del|mi|mis|su|sus|me|le|"
        "les|se|nos|te|que|ya|aun|todavia|solo|nada mas|nomas|a la|al la|hay|carga|la carga|"
        "bateria nivel|aparato|maquina|equipo|esa|ese|esto|ahi|aqui|pues|bien|"
        "mas|nueva|nuevas|extra|queda|quedan|me queda|me quedan|le queda|le quedan|"
        "nos quedan|nos queda|sigue|siguen|anda|andan|van|va|quedo|que estan|que esta|de carga|"
        "sola|solita|unica|por|tambien la|para el|cargadas|cargada|de las|de los|mia|mio|el "
        "nivel|nivel de carga"),
    ROW(ITEM_AND, 0, "y|e|mas"),
    OWN(ITEM_TO, 0, "a|o|u|y hasta|hasta"),
    ROW(ITEM_BETWEEN, 0, "entre|como entre|entre los|entre el"),
    ROW(ITEM_OF, 0, "de|de las|de los|de un total de|de sus"),
    ROW(ITEM_NOT, 0,
        "no|sin|ni|nunca|no es|no son|no de|no era|en vez de|en lugar de|no esta|"
        "no estan|no las|no la"),
    ROW(ITEM_AT, AT_ON,
        "en el|en el numero|esta en el|puesto en|puesta en|lo tengo en|la tengo en"),
    OWN(ITEM_AT, AT_ON, "en"),
    ROW(ITEM_AT, AT_AT, "al"),
    OWN(ITEM_AT, AT_AT, "a|a la|a un"),
    OWN(ITEM_AT, AT_IN, "en la|en mi|con la"),
    OWN(ITEM_AT, AT_ON, "con el"),
    ROW(ITEM_HAVE, 0,
        "tengo|tiene|tenemos|tenia|traigo|trae|traemos|traen|llevo|llevamos|lleva|con|cuento con|"
        "me quedan|nos quedan|hay|tienen|traia|teniamos|cargo con|me dieron|nos dieron|venia "
        "con|venian|conte|tengo solo|"
        "solo tengo|nada mas tengo|nomas tengo|teniendo"),
    ROW(ITEM_WILL_BE, 0,
        "a que hora|a que hora esta|a que hora estan|a que hora estara|a que hora estaran|a que "
        "hora queda|"
        "este|esten|estar|hasta|hasta que|quede|queden|a que este|a que esten|para que este|"
        "para que esten|cuando este|cuando esta|cuando estan|cuando estaran|llegue|llegue a|llega "
        "a|llega al|llegan a|llegan al|cuando llega|llegara a|sube a|suba a|"
        "llegar|llegar a|para llegar a|hasta el|hasta la|subir a|quedar|estaran|estara|sera|"
        "van a estar|va a estar|se ponga|la quiero|las quiero|quiero|ocupo|necesito|que esten|"
        "que este|hasta que este|hasta que esten|hasta que queden|hasta que quede|se llena|"
        "cargar al|cargar hasta|llegaran al|llegaran a|llegara al|lleguen al|lleguen a|alcanzan "
        "al|tenerlas|"
        "tenerla|tenerlas todas|llenar|llenarse|para que llegue a|estar al|este al|esten al"),
    /* ---- parts of one -------------------------------------------------------------------- */
    ROW(ITEM_HALF, 0,
        "a medias|medias|media|medio|mitad|la mitad|a la mitad|a mitad|en la mitad|media carga|"
        "por la mitad|a media carga|a medio|media llena|medio llena|"
        "mitad de carga|a media|media cargada|a medio cargar|a media carga|la mitad de carga"),
    ROW(ITEM_QUARTER, 0,
        "cuarto|un cuarto|cuarta parte|una cuarta parte|un cuarto de carga|"
        "la cuarta parte"),
    ROW(ITEM_FRACTION, 750, "tres cuartos|3 cuartos|tres cuartas partes|tres cuartos de carga"),
    ROW(ITEM_FRACTION, 667, "dos tercios|2 tercios|dos terceras partes"),
    ROW(ITEM_FRACTION, 333, "tercio|un tercio|una tercera parte|la tercera parte|1 tercio"),
    ROW(ITEM_HEDGE, 0,
        "supongo que|supongo|se me hace que|segun yo|me parece que|ponle|pongale|haz de cuenta|ha "
        "de estar|han de estar|debe estar|debe de estar|deben estar|deben de estar|ha de andar|"
        "como|unos|unas|aprox|aproximadamente|mas o menos|alrededor de|cerca de|tal vez|quizas|"
        "quiza|a lo mejor|creo que|creo|yo creo que|yo digo que|calculo que|calculo|digamos|"
        "como unos|como al|como a|como en|como un|casi casi|por ahi de|por ahi del|ha de estar en|"
        "ha de andar en|ha de tener|le calculo|como por|por el|alrededor del|cerca del|"
        "mas o menos al|mas o menos en|mas o menos a|yo diria|diria que|como el|unos como"),
    ROW(ITEM_HEDGE_AFTER, 0,
        "diria yo|yo diria|digo yo|yo digo|creo yo|supongo|yo supongo|segun yo|yo calculo|le "
        "calculo|se me hace|me parece|mas o menos|o algo asi|o por ahi|aprox|aproximadamente|creo|"
        "poco mas o menos|mas menos|yo creo|calculo|aproximado|o asi|"
        "por ahi|si no me equivoco"),
    ROW(ITEM_SOMETHING, 0, "y pico|y tantos|y tanto|y algo|y tantas"),
    ROW(ITEM_MINUS, 0, "menos"),
    /* ---- batteries and how full they are -------------------------------------------------- */
    ROW(ITEM_BATTERY, 1,
        "bateria #|pila #|bateria numero|pila numero|bateria|pila|bateria de repuesto|pila de "
        "repuesto|bateria extra"),
    ROW(ITEM_BATTERY, 2,
        "baterias|pilas|baterias de repuesto|pilas de repuesto|baterias extra|"
        "baterias extras"),
    ROW(ITEM_OTHER, 0,
        "otra|otro|la otra|el otro|de repuesto|repuesto|la de repuesto|otra mas|una mas|"
        "la de respaldo|de respaldo|la principal|la puesta|la extra|la nueva|la vieja|la grande|"
        "la chica|esta otra|la del aparato|la que trae|la que traigo|la de la bolsa|"
        "otra bateria|la otra bateria|otra pila|la otra pila|esta|la de reserva|de reserva|"
        "la restante|la mia|la de arriba|la de abajo|la de adentro|la de afuera|la negra|la blanca|"
        "la gris|la azul|la guardada|la chiquita|la grandota|la usada|la prestada|la cargada|"
        "la conectada|la de emergencia|la de la izquierda|la de la derecha|la izquierda|la derecha|"
        "la de la mochila|la de la maleta|la del bolso|la de la maquina|la del equipo|la que esta "
        "puesta|la que tiene puesta|la que trae puesta|la que tengo puesta|la que traigo puesta|la "
        "que esta guardada|la que esta en la maquina|la que esta en uso|la que uso|la que estoy "
        "usando|la mas nueva|la mas vieja|la mas chica|la mas grande"),
    ROW(ITEM_OTHER, 2, "otras|las otras|las demas"),
    ROW(ITEM_ORDINAL, 1, "primera|la primera"),
    ROW(ITEM_ORDINAL, 2, "segunda|la segunda|una segunda"),
    ROW(ITEM_ORDINAL, 3, "tercera|la tercera|una tercera"),
    ROW(ITEM_ORDINAL, 4, "la cuarta"),
    ROW(ITEM_ORDINAL, ORDINAL_LAST, "la ultima|ultima"),
    ROW(ITEM_BOTH, 0, "ambas|ambos|las dos estan|las dos traen|los dos"),
    ROW(ITEM_ALL, 0, "todas|todos|todas las|todas mis|todas estan|estan todas|todas ellas"),
    ROW(ITEM_EACH, 0,
        "cada una|cada uno|c / u|cada cual|por bateria|cada bateria|en cada una|"
        "por cada una|cada"),
    ROW(ITEM_SAME, 0,
        "tambien|igual|lo mismo|la otra igual|igualmente|esta igual|tambien esta|"
        "la otra tambien"),
    ROW(ITEM_UNKNOWN, 0,
        "sin numero|sin pantalla|no se le ve|se le borro|no marca nada|no dice nada|"
        "ni la he visto|ni la vi|ni la he revisado|ni la he checado|ni la revise|ni la cheque|ni "
        "la he tocado|no la vi|no la he abierto|no le he revisado|no la he probado|ni se cuanto|no "
        "supe|no supo|no se cuanta|a esa no la he visto|sin ver|ni la mire|no alcanzo a ver|no "
        "alcance a ver|no le veo|no la veo|nadie reviso|nadie la reviso|nadie sabe|nadie la "
        "checo|nadie checo|no la revisaron|a "
        "saber|vaya usted a saber|no se|no la he revisado|no he revisado|sin revisar|no revise|ni "
        "idea|quien sabe|"
        "no he checado|no la he checado|sin checar|no cheque|no se cuanto|no se cuanto traen|no se "
        "cuanto tienen|no se cuanto trae|no estoy seguro|"
        "no estoy segura|no la revise|no he visto|no la he visto|no recuerdo|no me fije|"
        "no tengo idea|no le he visto|no la cheque|no la mire|no la he mirado|no he mirado|"
        "se me olvido revisar|se me olvido checar|no se sabe|desconozco|no se ve"),
    ROW(ITEM_FULL, 0,
        "entera de carga|completa de carga|cargada del todo|cargadas del todo|"
        "carga entera|la carga entera|bateria entera|pila "
        "entera|llena|llenas|llenita|llenitas|completa|completas|lleno|llenos|completo|completos|"
        "completamente cargada|completamente cargadas|cargada por completo|toda cargada|"
        "cargadas por completo|bien cargada|bien cargadas|carga completa|a tope|hasta arriba|"
        "al tope|totalmente cargada|totalmente cargadas|cargada completa|cargadas completas|"
        "carga llena|con carga completa|recien cargada|recien cargadas|completamente llena|"
        "completamente llenas|cargaditas|cargadita|bien llena|bien llenas|bien llenita|bien "
        "llenitas|"
        "bien cargadita|bien cargaditas|repleta|repletas|cargada al maximo|"
        "cargadas al maximo|hasta el tope|cargada hasta el tope|cargadas hasta el tope|cargada del "
        "todo|cargadas del todo|con toda la carga|con la carga completa|con carga llena|"
        "cargada a tope|cargadas a tope|al full|a full|toda llena|todas llenas|"
        "llena llena|full de carga|completamente cargaditas"),
    CHARGE(0, 0,
           "muertita|muertitas|vaciita|vaciitas|moribunda|muerta|muertas|vacia|vacias|vacio|"
           "descargada|descargadas|agotada|agotadas|"
           "sin carga|vacios|muertos|muerto|completamente vacia|gastada|gastadas|en ceros|sin nada "
           "de carga|"
           "totalmente descargada|totalmente vacia|apagada|acabada|acabadas|cero|en cero|en zero|"
           "a cero|completamente descargada|vaciada|sin nada"),
    CHARGE(85, 99,
           "casi llena|casi llenas|casi completa|casi completas|casi lleno|casi llenos|"
           "ya casi llena|casi cargada|practicamente llena|casi casi llena|"
           "casi a tope|casi cargada por completo|por llenarse|ya casi llenas"),
    CHARGE(0, 10,
           "casi muerta|casi muertas|casi vacia|casi vacias|casi descargada|casi en cero|"
           "por morirse|casi agotada|casi sin carga|practicamente muerta|"
           "practicamente vacia|a punto de morir|a punto de acabarse|ya casi muerta|"
           "ya casi vacia|casi nada|casi acabada|casi apagada|en las ultimas|casi ceros|"
           "casi descargadas|por acabarse|ya casi se muere|muy poquita"),
    CHARGE(50, 65,
           "poco mas de la mitad|mas de la mitad|un poco mas de la mitad|"
           "un poquito mas de la mitad|algo mas de la mitad|apenas mas de la mitad|"
           "poquito mas de la mitad|arriba de la mitad|tantito mas de la mitad"),
    CHARGE(35, 50,
           "poco menos de la mitad|un poco menos de la mitad|casi la mitad|"
           "casi a la mitad|un poquito menos de la mitad|algo menos de la mitad|"
           "poquito menos de la mitad|apenas menos de la mitad|tantito menos de la mitad"),
    CHARGE(0, 25, "menos de un cuarto|menos de la cuarta parte|ni un cuarto"),
    CHARGE(10, 25, "un poco menos de un cuarto|poco menos de un cuarto|casi un cuarto"),
    CHARGE(25, 40, "mas de un cuarto|un poco mas de un cuarto|poco mas de un cuarto"),
    CHARGE(60, 75, "casi tres cuartos|un poco menos de tres cuartos|poco menos de tres cuartos"),
    CHARGE(75, 90, "mas de tres cuartos|un poco mas de tres cuartos|poco mas de tres cuartos"),
    CHARGE(0, 50, "menos de la mitad|abajo de la mitad"),
    ROW(ITEM_LIGHT, 1,
        "luz|lucecita|lucesita|barra|barrita|raya|rayita|foco|foquito|led|punto|"
        "puntito|cuadrito|luz verde|lucita|luz prendida|luz encendida|linea|"
        "rallita|palito"),
    ROW(ITEM_LIGHT, 2,
        "prendidas|encendidas|prendidos|encendidos|luces|lucecitas|lucesitas|barras|barritas|rayas|"
        "rayitas|focos|foquitos|"
        "leds|puntos|puntitos|cuadritos|luces verdes|luces prendidas|"
        "luces encendidas|lucitas|rallitas|focos prendidos|foquitos prendidos|"
        "segmentos|bolitas|bolitas verdes|circulitos|puntitos verdes|puntos verdes|rayitas "
        "verdes|barras "
        "verdes|barritas verdes|cuadritos verdes|focos verdes|foquitos verdes|lucecitas verdes|"
        "lineas|palitos|luces de carga|rayas de carga|focos encendidos"),
    ROW(ITEM_DIM, 0,
        "a medias|medias|parpadea|parpadeando|parpadeante|media luz|a medio prender|"
        "medio prendida|titilando|tenue|a media luz|media prendida|intermitente"),
    ROW(ITEM_SHOWS, 1,
        "ya llego a|ya llego al|ya subio a|subio hasta|indica|senala|registra|me "
        "indica|porcentaje|el porcentaje|porcentaje de carga|porcentaje de bateria|el porcentaje "
        "es|la "
        "carga "
        "es|la carga esta en|la carga va en|marcando|indicando|mostrando|senala|arroja|aparece|"
        "se ve en|va por|anda por|andan por|van por|ronda|"
        "ha bajado a|ha bajado al|acaba de bajar a|descendio a|se bajo a|se bajo al|"
        "marca|marcaba|dice|decia|indica|muestra|bajo a|bajo al|cayo a|cayo al|lee|me marca|me "
        "dice|"
        "brinca|oscila|baila|varia|fluctua|cambia|anda brincando|esta brincando|"
        "leyo|leyeron|lei|leemos|leen|se lee|le marca|le leyo|marcan|se quedo en|ya bajo "
        "a|marco|cargada hasta|dicen"),
    ROW(ITEM_SHOWS, 0,
        "me sale|pone|va en|iba en|anda en|anda al|va al|van en|andan en|trae|tiene|quedo en|"
        "quedo al|cargada al|cargada a|cargadas al|le queda|trae como|esta ya en|"
        "ya va en|esta al|estan al|traia|tenia|estaba al|le quedan|esta a|estan a|"
        "van al|tienen|traen|me queda|queda|quedan|tengo"),
    OWN(ITEM_FROM, 0, "de|desde|desde el|del|de un|desde un|desde la"),
    /* ---- mode and setting ------------------------------------------------------------------ */
    ROW(ITEM_SETTING, 0,
        "la subio a|lo subio a|me subio a|me lo subio a|me la subio a|se la subio a|la bajo a|lo "
        "bajo a|me lo bajo a|me la bajo a|la cambio a|lo cambio a|me cambio a|me lo cambio a|le "
        "subio a|la subieron a|lo subieron a|me subieron a|la volvimos a|lo volvimos a|la bajamos "
        "a|lo bajamos a|la subimos a|lo subimos a|la "
        "pusimos en|"
        "lo pusimos en|la regresamos a|lo regresamos a|lo volvi a|la volvi a|lo regrese a|la "
        "regrese a|"
        "le muevo a|le movi a|lo muevo a|lo pongo a|le pongo|si le pongo|lo subo a|lo bajo a|le "
        "subo a|"
        "le bajo a|lo subo al|lo bajo al|la subo a|la bajo a|"
        "configuracion|configuracion de|intensidad|potencia|graduado en|graduado a|regulado en|"
        "regulado a|le puse|lo puse en|la puse en|lo puse al|me puso|me puso en|me pusieron|"
        "me pusieron en|me tienen en|lo subi a|lo baje a|le subi a|le baje a|la subi a|la baje "
        "a|la subieron a|la bajaron a|le subieron a|le bajaron a|lo dejo en|lo traigo "
        "en|"
        "la traigo en|lo traigo al|numero de flujo|"
        "nivel|ajuste|flujo|posicion|dosis|nivel de flujo|ajuste de|ajuste en|puesto en|"
        "en nivel|programado en|programada en|esta puesto en|flujo de|fijado en|en el nivel|"
        "flujo en|configurado en|perilla en|velocidad"),
    ROW(ITEM_MODE, MODE_PULSE,
        "pulso|pulsos|modo pulso|por pulsos|en pulso|modo pulsos|"
        "modo de pulso|por pulso|pulsado|flujo pulso|flujo por pulsos|"
        "dosis de pulso|flujo pulsado"),
    ROW(ITEM_MODE, MODE_CONTINUOUS,
        "continuo|continua|flujo continuo|modo continuo|constante|"
        "flujo constante|en continuo|oxigeno continuo"),
    ROW(ITEM_MODE, MODE_NIGHT,
        "modo noche|modo nocturno|modo sueno|modo de noche|modo dormir|"
        "modo de sueno"),
    ROW(ITEM_WORD, 0,
        "en camino|por el camino|en el camino|carretera esta cerrada|carretera cerrada|camino esta "
        "cerrado|abran la carretera|abra la "
        "carretera|abran el camino|"
        "entre medio|de por medio|en medio|a mitad de|a mitad del|mitad del camino|a medio camino|"
        "ni la mitad|la cuarta parte|vez y media|una vez y media|veces y media|"
        "pulso del corazon|mi pulso|su pulso|pulso cardiaco|pulso de el|el pulso es|buenos "
        "dias|buenas tardes|buenas noches|buena noche|buen dia|pasado manana|primera vez|de "
        "primera|segunda vez|a la vez|de vez en cuando|luz del cuarto|foco del cuarto|"
        "punto muerto|por completo el dia|dia completo|noche completa|"
        "completa la noche|tiempo completo|precio completo|un rato|hora exacta|media vuelta|"
        "media naranja|clase media|en medio|por medio|a la una y otra vez|cuarto de hotel|"
        "cuarto de bano|nombre completo|toda la vida|una hora mas de diferencia|todos modos|"
        "de todos modos|una pregunta|una duda|una cosa|a todos|hola a todos"),
    ROW(ITEM_USE, 0,
        "uso|usa|uso el|usa el|uso la|usamos|lo uso en|la uso en|uso en|usa en|"
        "usando|usando el|lo pongo en|me recetaron|lo uso|usandolo en|lo usa en|"
        "uso en el"),
    /* ---- units and what is only counted ------------------------------------------------------ */
    ROW(ITEM_UNIT, UNIT_PERCENT,
        "por ciento|porciento|% de carga|por ciento de carga|"
        "por ciento de bateria|% de bateria"),
    ROW(ITEM_UNIT, UNIT_MINUTE, "minuto|minutos|minutitos|min|mins|minutos mas"),
    ROW(ITEM_UNIT, UNIT_HOUR,
        "horita|horitas|hora mas|hora|horas|hrs|hr|h|horitas|horas mas|horas seguidas|horas "
        "enteras|"
        "horas completas|hs"),
    ROW(ITEM_UNIT, UNIT_DAY, "dia|dias"),
    OWN(ITEM_UNIT, UNIT_MINUTE, "m"),
    ROW(ITEM_UNIT, UNIT_PSI, "libras de presion|libras por pulgada"),
    ROW(ITEM_UNIT, UNIT_BAR, "bar|bares"),
    ROW(ITEM_UNIT, UNIT_FLOW,
        "litro|litros|litros por minuto|litro por minuto|l por minuto|litros / minuto|"
        "litros x minuto|lts por minuto|litros al minuto|litro al minuto|litros / min|lts"),
    ROW(ITEM_UNIT, UNIT_FEET, "pies|pie|pies de altura|pies de altitud"),
    ROW(ITEM_UNIT, UNIT_METER,
        "metros|metro|mts|metros de altura|metros de altitud|msnm|"
        "metros sobre el nivel del mar"),
    ROW(ITEM_UNIT, UNIT_MILE, "millas|milla"),
    ROW(ITEM_UNIT, UNIT_KM, "kilometros|kilometro|km|kms"),
    ROW(ITEM_UNIT, UNIT_MPH, "millas por hora|millas la hora"),
    ROW(ITEM_UNIT, UNIT_PER_HOUR, "por hora"),
    ROW(ITEM_UNIT, UNIT_KMH,
        "km por hora|kilometros por hora|km la hora|km / h|kmh|km / hr|"
        "kilometros la hora|km / hora"),
    ROW(ITEM_UNIT, UNIT_FAHRENHEIT, "grados fahrenheit|grados f|farenheit|grados farenheit"),
    ROW(ITEM_UNIT, UNIT_CELSIUS, "centigrados|grados centigrados|grados celsius|grados c"),
    ROW(ITEM_UNIT, UNIT_DEGREE, "grados|grado"),
    ROW(ITEM_UNIT, UNIT_BELOW_ZERO, "bajo cero|grados bajo cero"),
    ROW(ITEM_UNIT, UNIT_POUND, "libra|libras|lbs"),
    ROW(ITEM_UNIT, UNIT_OTHER,
        "anos|ano|mg|miligramos|pesos|dolares|voltios|voltios dc|vatios|celdas|personas|ninos|"
        "noches|noche|semanas|meses|veces|pisos|escalones|kilos|kg|pulgadas|pastillas|maletas|"
        "amperios|watts|gramos|nietos|hijos|cuadras|dormitorios|huespedes|habitaciones|paradas|"
        "euros|centavos|cuartos|hermanas|hermanos|gotas|tabletas|boletos|asientos|de nosotros"),
    ROW(ITEM_NAMED, 0,
        "cuarto|habitacion|puerta|asiento|fila|vuelo|vuelo numero|ruta|carretera|autopista|salida|"
        "numero|edificio|camion|autobus|piso|cabana|lote|dia|el dia|del dia|pagina|modelo|orden|"
        "casa|calle|avenida|depto|departamento|extension|codigo|boleto|reserva|pedido|terminal|"
        "anden|tren|suite|seccion|clave|mi numero es|telefono|tel|sala|puerta de embarque|pasillo|"
        "kilometro|zona|cama|interior|local|factura|folio|camiseta|canal|colonia|cajon|muelle|"
        "grupo "
        "de|familia de|mesa para|"
        "sitio|espacio|estacion|consultorio"),
    ROW(ITEM_PRICE, 0,
        "$|cuesta|cuestan|costo|pague|pago|pagamos|cobran|cobraron|me costo|"
        "deposito de|renta de|precio de|a solo $|me cobraron|vale|salio en|pagando|"
        "renta cuesta|deposito|pagar"),
};

const size_t lexicon_es_count = sizeof lexicon_es / sizeof lexicon_es[0];
