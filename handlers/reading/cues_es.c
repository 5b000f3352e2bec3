/* What is asked, in Spanish: see lexicon.h. */
#include "lexicon.h"

const char *const cues_es[CUE_COUNT] = {
    [CUE_WATCH] =
        "me recuerda que|me recuerda a las|me recuerda conectar|me recuerda cargar|me recuerda "
        "cambiar|me avisa a las|me avisa cuando|me avisa que|me avisa de|"
        "que no se me olvide|que no se me pase|no me dejen olvidar|quiero aviso|quiero un "
        "aviso|necesito aviso|necesito un aviso|ocupo aviso|ocupo un "
        "aviso|dame "
        "aviso|denme aviso|dame un aviso|ponme recordatorio|pon recordatorio|programa una alarma|"
        "programame|una alerta|mandame alerta|manda alerta|mandenme alerta|me hablas a|me hablas "
        "cuando|me llamas a|me llamas cuando|llamame a|llamame cuando|hablame a|hablame "
        "cuando|marcame a|"
        "me marcas a|timbrame|pongame una alarma|pongame alarma|ponganme una alarma|ponganme "
        "alarma|"
        "me mandan|mandame un|mandeme|me escriben|escribanme|me dicen cuando|diganme cuando|digame "
        "cuando|me dice cuando|me alertas|me alertan|quiero que me digan|quiero que me digas|"
        "avisa cuando|avise cuando|avisen cuando|avisa "
        "a|avisame|avisarme|avisenme|recuerdame|recordarme|recordatorio|me recuerdas|me avisas|"
        "ponme alarma|ponme una alarma|pon una alarma|pon alarma|alarma a las|una alarma|dime que|"
        "mandame mensaje|mandame un mensaje|mandame * texto|alertame|despiertame|me avisan|"
        "aviseme|recuerdeme|recuerdenme|mandenme|dime cuando|me dices cuando|escribeme|"
        "me escribes cuando|texteame|me puedes avisar|me pueden avisar|me puedes recordar|"
        "me pueden recordar|acuerdame|me acuerdas|notificame|mandame algo|me mandas|"
        "me recuerde|me avise|avisanos|avisenos|mensajeame|me mandes|que me avisen|que me avises|"
        "manda mensaje|manden mensaje|un aviso|dime * antes|me recuerden|recuerden",
    [CUE_CYLINDER] =
        "tanque|tanques|cilindro|cilindros|manometro|bombona|botella de oxigeno|"
        "la botella|libras de presion|regulador|tanquecito|conservador|garrafa|botella",
    [CUE_CHARGING] =
        "salir con * llenas|irme con * llenas|irnos con * llenas|llevarme las * llenas|listas para "
        "entonces|lista para entonces|estan listas|estara lista|estaran listas|llegan "
        "a tiempo|"
        "llegaran a tiempo|falta pa que llene|falta para que llene|llegaran al 100|llegaran al "
        "cien|llegara al 100|llegara al cien|tenerlas llenas|tenerlas "
        "todas llenas|tenerla llena|tenerlas cargadas|tenerlas todas cargadas|tenerla cargada|"
        "las cargo|la cargo|las cargamos|la cargamos|dejo en el carro|dejo en el encendedor|dejo "
        "en la pared|dejo enchufada|dejo conectada|"
        "pongo a cargar|pongo en el carro|pongo en la pared|a cuanto llega|a cuanto llegan|a "
        "cuanto sube|con cuanto llega|hasta cuanto llega|a que "
        "porcentaje|cuanto va a tener|las cuatro listas|las cinco listas|todas listas|todas "
        "cargadas|las dos cargadas|las tres "
        "cargadas|las cuatro cargadas|listas el|lista el|queden listas|quede lista|cuanto "
        "tendra|cuanto tendran|cuanto va a ganar|cuanto gana|da tiempo|dara tiempo|"
        "falta para llena|falta para estar llena|falta para llenarse|falta para que este|falta "
        "para el 100|"
        "falta para que se llene|falta para que esten|en cuanto van a estar|en cuanto "
        "estaran|hasta donde llegan|hasta donde cargan|cuanto habran subido|"
        "al 100 antes|al cien antes|necesito al 100|necesito al cien|ocupo al 100|ocupo al "
        "cien|quiero al "
        "100|quiero al cien|al 100 por ciento para|de * a llena|desde * a llena|muerta a "
        "llena|vacia a "
        "llena|cero a llena|mitad a llena|cuarto a llena|"
        "estar al cien|este al cien|esten al cien|estar al 100|este al 100|esten al 100|llegar al "
        "cien|tiene que estar al|tienen que estar al|al cien a las|al cien para|queda llena|quedan "
        "llenas|queda cargada|quedan cargadas|quedara llena|quedaran llenas|por ciento para|% para "
        "las|% para el|cargar|cargarse|cargarla|cargarlas|cargarlo|se "
        "cargan|se carga|cargando|carguen|cargue|"
        "recargar|hasta llena|cargada para|cargadas para|cargada antes|cargadas antes|"
        "cargada a las|cargadas a las|estan listas|este lista|esten listas|esta lista|"
        "estar listas|estar lista|este llena|esten llenas|estar llena|estar llenas|"
        "estar cargada|estar cargadas|listas para|lista para|llenarse|que se llene|"
        "que se llenen|se llena|se llenan|quede llena|queden llenas|la bateria cargada|"
        "baterias cargadas|de * a 100|del * a 100|al 100 si|hasta el 100|hasta 100|terminan de "
        "cargar|"
        "termina de cargar|hasta el 80|hasta 80|al 80 cuanto|llenarla|llenarlas|llenar|"
        "este cargada|esten cargadas|quede cargada|queden cargadas|cargadas por completo para|"
        "estara cargada|estaran cargadas|estara llena|estaran llenas|tiempo de carga|"
        "a que llegue al|para que llegue al|la quiero llena|las quiero llenas|cargadita|"
        "cargaran|cargara|recarga|recargue|recargan|las tres listas|las dos listas|lista a las|"
        "listas a las|quiero * llenas|quiero * llena|necesito * llenas|necesito * llena|"
        "ocupo * llenas|ocupo * llena|ocupo * cargada|ocupo * cargadas|necesito * cargada|"
        "necesito * cargadas|a cargar|cargo|a que hora esta * llena|a que hora estan|a que hora "
        "estara|si la conecto|si la enchufo|"
        "si conecto|si enchufo|si las conecto|si las enchufo|de cargar|poner a cargar|cuanto "
        "tarda|cuanto tardan|tarda en|tardan en|horas de carga|cuanto sube|cuanto suben|"
        "cuanto le sube|cuanto le suben|para que se llene|minutos de carga",
    [CUE_FLIGHT] =
        "misma hora alla|mismo huso|misma zona horaria|una hora mas alla|una hora menos alla|alla "
        "son * horas menos|alla son * horas mas|alla es una hora|horas menos alla|horas mas "
        "alla|hora de "
        "alla|hora local|zona horaria|huso "
        "horario|aterriza|aterrizamos|aterrizo|despega|despegamos|vuelo|vuelos|avion|volar|"
        "aerolinea|puerta a puerta|en el aire|escala|escalas|"
        "abordar|vuelo de|volamos|volando|aeropuerto|embarcar",
    [CUE_ON_PLANE] = "voy en el avion|estoy en el avion|vamos en el avion|en el avion|voy volando|"
                     "en pleno vuelo|en el vuelo|ya en el aire|estamos volando|a bordo",
    [CUE_TRIP] =
        "me voy|nos vamos|vamos con|voy con|voy al|voy a casa|vamos al|rumbo "
        "a|viaje|paseo|caminata|manejando|manejar|carretera|excursion|salimos|autobus|"
        "camion|mandados|para ir|fuera de casa|caminar|sendero|dia de campo|tren|recorrido|"
        "ir a|estar fuera|ida y vuelta|ida|playa|de manejo|en carro|en coche|barco|lancha|"
        "trayecto|vamos a|visita",
    [CUE_GENERAL] = "lo normal|normal|normalmente|por lo general|en general|usualmente|en "
                    "promedio|generalmente|"
                    "por lo regular|comunmente|tipicamente|promedio|se supone|suele|suelen|"
                    "cuanto rinde|rendimiento",
    [CUE_LIFE] = "dura|duran|rinde|rinden|da|dan|me dan|aguanta|aguantan|me da|son|me duran|"
                 "durara|duraran|sale|salen|serian|duracion|me dura|rendir|funciona|funcionan",
    [CUE_LEFT] =
        "hasta entonces|hasta esa hora|"
        "queda|quedan|me queda|me quedan|le queda|le quedan|tengo desde|cuanto tengo|"
        "cuantas horas tengo|hasta que hora|llego a|llego hasta|ahorita|ahora|todavia|"
        "me dura|me duran|cuanto tiempo tengo|aguanto|aguantara|alcanza hasta|llega hasta|"
        "alcanza para las|se acaba|llegare|antes de que se|desde ahora|cuanto mas|me resta|"
        "nos queda|nos quedan|le dura|tiempo me|alcanzo a|hasta las|tendre",
    [CUE_HOW_LONG] =
        "hasta cuando|cuanto * dura|cuanto * duran|cuanto * queda|cuantas horas|cuanto tiempo|"
        "cuantos minutos|hasta que hora|cuanto me|cuanto le|cuanto|"
        "a que hora|por cuanto|horas son|cuanto * aguanta",
    [CUE_HOW_MANY] = "cuantas baterias|cuantas pilas|cuantas necesito|cuantas ocupo|cuantas debo|"
                     "cuantas llevo|cuantas hacen|cuantas me|cuantas tengo que|cuantas mas|cuantas",
    [CUE_ENOUGH] = "alcanza|alcanzan|me alcanza|llego|llegamos|basta|bastan|suficiente|"
                   "suficientes|si puedo|puedo|la hago|ok|me alcanzan|alcanzo|es bastante|"
                   "sirve|aguanta|aguantan|sobra|alcanzara|alcanzaran|la libro|voy bien|da para",
    [CUE_BATTERY_ASKED] = "pregunto por las baterias|pregunto por la bateria|es por las baterias|"
                          "hablo de las baterias|cuanto duran las baterias|cuanto dura la bateria|"
                          "cuanto me duran las baterias|pregunta es por las baterias",
    [CUE_READY_UNTIMED] = "antes de irnos|antes de irme|antes de salir|antes de que salgamos|"
                          "antes de partir|para cuando salgamos|antes del viaje|antes de que nos|"
                          "a tiempo|antes de dormir|antes del vuelo|para cuando nos|"
                          "antes de que salga|para cuando salga|antes de mi cita|antes de la cita|"
                          "antes de misa|antes de que me",
    [CUE_CONSERVER] = "conservador|ahorrador|regulador de pulso|conservadora|economizador",
};
