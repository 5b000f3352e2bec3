/* Spanish, times, ways and power: see lexicon.h. */
#include "lexicon_rows.h"

const struct lexicon_entry lexicon_es_ways[] = {
    /* ---- times ------------------------------------------------------------------------------- */
    ROW(ITEM_AM, 0,
        "de la manana|de la madrugada|am|a . m .|a . m|por la manana|en la madrugada|"
        "en la manana temprano|de madrugada"),
    ROW(ITEM_PM, 0, "pm|p . m .|p . m|del mediodia|del medio dia"),
    ROW(ITEM_DAYPART, DAYPART_AFTERNOON, "de la tarde|por la tarde|en la tarde|esta tarde"),
    ROW(ITEM_DAYPART, DAYPART_NIGHT, "de la noche|por la noche|en la noche"),
    ROW(ITEM_NOON, 720,
        "mediodia|medio dia|el mediodia|al mediodia|del mediodia|"
        "para el mediodia|las doce del dia"),
    ROW(ITEM_NOON, 0, "medianoche|media noche|la medianoche|la media noche"),
    ROW(ITEM_OCLOCK, 0,
        "en punto|del dia|hora de alla|hora local|hora de aca|hora de aqui|hora de alli|hora "
        "nuestra|"
        "hora de ellos|horas de alla|de alla|tiempo local"),
    ROW(ITEM_PAST, 0, "y|con"),
    ROW(ITEM_TO_HOUR, 0, "para las|para la"),
    ROW(ITEM_LESS, 0, "menos"),
    ROW(ITEM_CLOCK_LEAD, 0,
        "a las|a la|alas|como a las|como a la|a eso de las|a eso de la|tipo|alrededor de las|"
        "cerca de las|las|la|hacia las|por ahi de las|sobre las|para las|para la|desde las|"
        "desde la|hasta las|hasta la|antes de las|antes de la|son las|es la|eran las|era la|"
        "a mas tardar a las|ahora son las|ya son las|ahorita son las|a partir de las|de las|"
        "para eso de las|ya es la|ahorita es la|como para las"),
    ROW(ITEM_DAY, DAY_TODAY, "hoy|hoy mismo|el dia de hoy"),
    ROW(ITEM_DAY, DAY_TOMORROW, "manana|manana mismo"),
    ROW(ITEM_DAY, DAY_MONDAY, "lunes|el lunes"),
    ROW(ITEM_DAY, DAY_TUESDAY, "martes|el martes"),
    ROW(ITEM_DAY, DAY_WEDNESDAY, "miercoles|el miercoles"),
    ROW(ITEM_DAY, DAY_THURSDAY, "jueves|el jueves"),
    ROW(ITEM_DAY, DAY_FRIDAY, "viernes|el viernes"),
    ROW(ITEM_DAY, DAY_SATURDAY, "sabado|el sabado"),
    ROW(ITEM_DAY, DAY_SUNDAY, "domingo|el domingo"),
    ROW(ITEM_TONIGHT, 0, "esta noche|hoy en la noche|hoy por la noche|hoy noche"),
    ROW(ITEM_AGO, 0, "atras|desde entonces|ya"),
    ROW(ITEM_AGO_LEAD, 0,
        "en la ultima|en las ultimas|en los ultimos|en el ultimo|durante la ultima|durante las "
        "ultimas|por las ultimas|por los ultimos|"
        "hace|hace como|desde hace|hace unos|hace unas|hace mas de|lleva|llevo|llevamos|"
        "las ultimas|los ultimos|ya lleva|ya llevo|desde hace como|hace ya|"
        "hace aproximadamente|hace casi|lleva ya|lleva como|lleva unas|llevo como|la ultima|"
        "lleva usandose|lleva prendido|lleva sin luz|llevamos sin luz|llevo desconectado|"
        "llevo desconectada|lleva desconectado|lleva desconectada|llevo caminando|"
        "llevamos caminando|llevo sin luz|lleva corriendo|lleva trabajando|y lleva|y llevo|"
        "llevo en bateria|lleva en bateria|llevo usandolo|ya llevamos|"
        "hace apenas|han pasado|pasaron|ya pasaron|lleva encendido|"
        "llevo usando la bateria|llevo con bateria"),
    ROW(ITEM_SINCE, 0, "desde|desde las|desde la"),
    ROW(ITEM_NOW, 0,
        "ahora|ahorita|ahora mismo|en este momento|ya|actualmente|al momento|"
        "orita|ahora ya|ahora va|ya va"),
    ROW(ITEM_NOW_IS, 0,
        "son las|es la|ya son las|ahora son las|ahorita son las|ya es la|"
        "ahorita es la|ahora es la|van a ser las|ya van a ser las|casi son las|ya casi son las|"
        "son como las|y son las|son casi las|"
        "mi reloj marca las|el reloj marca las|el reloj dice las|mi reloj dice las|ya dieron las|"
        "ya son como las|ahora a las"),
    ROW(ITEM_EARLIER, 0,
        "ayer|anoche|esta manana|en la manana|ayer en la noche|antier|"
        "la semana pasada|antes|hoy en la manana|ayer por la noche|al principio|"
        "hoy temprano|temprano"),
    ROW(ITEM_WAS, 0,
        "tenia|estaba|era|eran|traia|empezo con|estaban|marcaba|empezo en|habia|decia|"
        "arranco con|fue|iba en|tuvo|empece con|sali con|salimos con|marco"),
    ROW(ITEM_THEN_LEFT, 0,
        "desconecte|desconectamos|lo desconecte|la desconecte|salimos|sali|cuando salimos|"
        "cuando sali|quite del enchufe|desde que salimos|se fue la luz|lo quite|desenchufe|"
        "lo desenchufe|la desenchufe|desenchufamos|la quite|deje el enchufe|la saque|lo saque|"
        "lo desconectamos|arrancamos|empece|empezamos|la puse|lo prendi|prendi|encendi|"
        "lo encendi|se corto la luz|sali con|salimos con|deje la pared|desconectado|desconectada|"
        "desconectado desde|revise|cheque|la revise|la cheque|mire|vi|lo revise"),
    ROW(ITEM_DEPART, 0,
        "salgo|salimos|sale|salen|salir|salida|nos vamos|me voy|se va|irnos|partimos|parte|"
        "arranca|despega|arrancamos|nos recogen|pasan por mi|me recogen|nos recoge|vienen por mi|"
        "la salida es|la salida|me tengo que ir|tenemos que salir|tengo que salir|hay que salir|"
        "salimos de|irme|vamos a salir|voy a salir|el camion sale|tenemos que irnos|me recoge|"
        "empieza|empezamos|saldremos|saldre|pasan por nosotros|nos salimos|dejamos|"
        "nos pasa a buscar|nos pasan a buscar|me pasa a buscar|me pasan a buscar|nos pasa a "
        "recoger|pasa el taxi|"
        "pasa la van|pasa por nosotros|viene por nosotros|pasa a recogernos|tomo el bus|nos "
        "tenemos que ir|parten|me llevan|me marcho|nos marchamos"),
    ROW(ITEM_ARRIVE, 0,
        "volvemos|vuelvo|vuelve|regresamos|regreso|regresa|llega|llegamos|llegada|aterriza|"
        "llego|de regreso|llegan|estamos de vuelta|de vuelta|aterrizamos|estoy de vuelta|"
        "estamos de regreso|llegaremos|llegando|llegare|vuelta|volver|regresar|"
        "acaba|termina|terminamos|estamos en casa"),
    ROW(ITEM_BY, 0,
        "para|para las|para la|antes de|antes de las|antes de la|a mas tardar|"
        "a mas tardar a las|para el|listas a las|lista a las|listas para|lista para|"
        "para eso de las|como para las|lista antes de|listas antes de"),
    ROW(ITEM_UNTIL, 0,
        "llegar a las|llegar a la|llegar hasta las|aguantar hasta las|durar hasta las|"
        "hasta|hasta las|hasta la|hasta el|llego a las|llego a la|llega a las|"
        "llegan a las|alcanza para las|llegamos a las|me alcanza para llegar a las|"
        "aguanta a las|aguanta hasta las|dura hasta las|llega a la|llegan a la|"
        "alcanza a las|alcanzan a las|llego hasta las|para llegar a las|"
        "hasta como las|llegare a las|como hasta las"),
    ROW(ITEM_BEFORE, 0,
        "antes|antes de que|de anticipacion|previo|antes que|de aviso|"
        "con anticipacion"),
    ROW(ITEM_EVENT, 0,
        "cita|mi cita|misa|cena|comida|funcion|concierto|boda|reunion|empieza|partido|doctor|"
        "almuerzo|desayuno|la cita es|fiesta|clase|ceremonia|consulta|pelicula|toma su|tomo mi|"
        "show|juego|evento|junta|dentista|obra|abren|cierra|graduacion|servicio"),
    ROW(ITEM_REMIND, 0,
        "quiero aviso|quiero un aviso|necesito aviso|dame aviso|denme aviso|una alerta|me "
        "hablas|me llamas|"
        "llamame|hablame|marcame|me marcas|timbrame|pongame una alarma|ponganme una alarma|mandeme|"
        "me escriben|escribanme|diganme|digame|me alertas|me alertan|ponme una alarma|ponme alarma|"
        "avisame|avisa|avisarme|avisenme|recuerdame|recordarme|recordatorio|me recuerdas|"
        "me avisas|mandame mensaje|mandame un mensaje|mandame|alertame|despiertame|me mandas|"
        "me avisan|avise|aviseme|recuerdeme|recuerdenme|mandenme|pongame|ponme un recordatorio|"
        "me recuerde|me avise|dime cuando|me dices cuando|mandame texto|mandame un texto|"
        "escribeme|me escribes|mensajeame|dime|me pueden avisar|me puedes avisar|notificame|"
        "me puedes recordar|me pueden recordar|acuerdame|me acuerdas|textea|texteame|un aviso|"
        "quiero que me avisen|quiero que me avises|avisenos|avisanos|manden mensaje|manda mensaje"),
    ROW(ITEM_LEFT, 0,
        "falten|falta|faltan|queden|quede|resten|restantes|me queden|le queden|"
        "le quede|me quede|le falten|nos queden|restan"),
    ROW(ITEM_LASTS, 0,
        "dure|duren|durar|dura|duran|aguante|aguanten|aguanta|aguantan|alcance|alcanza para|"
        "alcanzan para|aguantar|me dure|me aguante|me alcanza para|"
        "me alcanzan para|tiene que durar|tienen que durar|que me dure|"
        "suficiente para|bastan para|basta para|me alcance|que dure|que aguante|por lo menos|"
        "me duran|me dura|me aguanta|me aguantan|minimo|da para|dan para|cubre|cubrir|al "
        "menos|tiene que aguantar|tienen que aguantar"),
    ROW(ITEM_LASTS, 1, "necesito|ocupo|necesitamos|otras|para|estar"),
    ROW(ITEM_CORRECT, 0,
        "no , mejor|no mejor|espere|esperese|espereme|esperame|esperate|perdon|no "
        "perdon|digo|mejor dicho|corrijo|me "
        "equivoque|quise decir|no espera|"
        "bueno no|perdona|disculpa|disculpe|correccion|miento|no miento|no digo|o sea no|"
        "perdon no|mas bien|rectifico|no mas bien|ah no|ay no|no no"),
    /* ---- ways and power ------------------------------------------------------------------------
     */
    ROW(ITEM_GOING, LEG_DRIVE,
        "vamos en el carro|vamos en el coche|voy en el carro|voy en el coche|vamos en carro|vamos "
        "en coche|va en el carro|voy manejando|troca|en troca|de "
        "troca|carro|coche|auto|manejo|manejar|manejando|camion|autobus|camioneta|bus|taxi|tren|"
        "metro|"
        "carretera|en carro|en coche|en auto|en el carro|en el coche|manejamos|conduciendo|"
        "conducir|por carretera|de carretera|en camion|en autobus|en tren|en bus|en taxi|de manejo|"
        "guagua|en guagua|van|furgoneta|tranvia|combi|en el bus|en el camion|en el tren|viaje "
        "en carro|"
        "viaje en coche|en camioneta|en el auto|de camino|al volante|manejada|de coche|de carro|"
        "de camion|de autobus|de bus|de tren|el camino|el camino es|el camino son|casa "
        "rodante|microbus|colectivo|de metro|micro|en "
        "micro|de micro|buseta|en buseta|pesera|pesero|en pesero|trolebus|en trolebus|omnibus|en "
        "omnibus|metrobus|en metrobus|remis|en remis|ferrocarril|en ferrocarril|trencito|en el "
        "trencito|moto|en moto|motocicleta|en motocicleta|cuatrimoto|en "
        "cuatrimoto|limusina|ambulancia|en ambulancia|carreta|en carreta|transporte|en transporte"),
    ROW(ITEM_GOING, LEG_FLIGHT,
        "vuelo|vuelos|avion|volar|volando|en avion|en el avion|de vuelo|vuelo directo|"
        "vuelo de regreso|volamos|vuela|vuelos de|de avion"),
    ROW(ITEM_GOING, LEG_WAIT,
        "mirador|en el mirador|de pie|de pesca parados|pescando parados|parados pescando|"
        "paro|paro a "
        "comer|parado|parada|parados|paradas|estacionado|estacionados|espero|esperamos|esperare|"
        "aguardo|sentada|sentado|me "
        "quedo|espera|esperar|esperando|escala|escalas|escalas de|esperas|conexiones|conexion|en "
        "la "
        "sala|sala de espera|en la clinica|"
        "en el hospital|en misa|misa|cita|comida|cena|en el restaurante|parada|en el aeropuerto|"
        "consulta|concierto|boda|funcion|reunion|en la fiesta|fiesta|visita|en el consultorio|"
        "estamos en|estancia|escala de|de espera|de escala|pelicula|cine|en el cine|clase|show|"
        "almuerzo|desayuno|en el restaurant|partido|en la playa|picnic|en el parque|paramos|"
        "esperamos|con el doctor|en el doctor|museo|en el museo|junta|dialisis|iglesia|"
        "entierro|bautizo|quinceanera|cumpleanos|cafe|cafeteria|zoologico|terapia|quimio|"
        "laboratorio|"
        "super|supermercado|farmacia|tienda|salon|escuela|feria|rosario|recital|"
        "juntas|citas|casino|en el "
        "casino|conferencia|taller|seminario|feria|torneo|tratamiento|juzgado|"
        "correo|oficina|en la oficina|baile|baby shower|reunion familiar|asamblea|ensayo|clases|"
        "aguas termales|balneario|alberca|en la alberca|estadio|en el "
        "estadio|palenque|circo|jaripeo|"
        "kermes|cancha|oculista|cardiologo|neumologo|radiografia|analisis|estudios|"
        "de fila|haciendo fila|haciendo cola|formada|formado|formados|"
        "comemos|comer|almorzamos|cenamos|desayunamos|almorzar|cenar|desayunar|paramos a comer|"
        "parar a comer|nos quedamos|me siento|nos sentamos|peluqueria|biblioteca|banco|mercado|"
        "en la tienda|en el banco|en el mercado|dentista|en el dentista|funeral|velorio|"
        "en la iglesia|teatro|en el teatro|descanso|quedarme|quedarnos|ceremonia|sentada en|"
        "sentado en|sentados en|para comer|comiendo|graduacion"),
    ROW(ITEM_GOING, LEG_HIKE,
        "caminata|caminar|caminando|a pie|sendero|camino|caminamos|andando|paseo a pie|"
        "de caminata|caminata de|excursion a pie|senderismo|caminada|de sendero|subida|"
        "vuelta a pie|paseo caminando"),
    ROW(ITEM_GOING, LEG_OTHER,
        "fuera|paseo|barco|lancha|ferry|compras|mandados|crucero|teleferico|bote|transbordador|"
        "fuera de casa|estar fuera|andar fuera|en barco|de compras|en lancha|tour|recorrido|"
        "excursion|pescando|de pesca|kayak|en kayak|panga|en panga|yate|en yate|pontoon|"
        "pescar|bicicleta|en bici|caballo|a caballo|golf"),
    ROW(ITEM_EACH_WAY, 0,
        "cada vuelta|por vuelta|cada trayecto|"
        "por lado|cada lado|por viaje|ida y vuelta|cada trayecto|cada tramo|de ida y vuelta|"
        "de ida y lo mismo de vuelta|ida y regreso|de ida y de vuelta|"
        "cada viaje|cada vuelo|de ida y regreso|de ida y otro tanto de vuelta"),
    ROW(ITEM_SAME_BACK, 0,
        "vuelvo igual|regreso igual|vuelvo lo mismo|regresamos lo mismo|volvemos lo mismo|"
        "vuelvo por lo mismo|vuelvo por el mismo camino|y vuelta igual|regresar igual|volver igual|"
        "me regreso igual|me vuelvo igual|nos regresamos igual|nos volvemos igual|"
        "lo mismo de regreso|lo mismo de vuelta|igual de regreso|igual de vuelta|"
        "lo mismo para regresar|y lo mismo de vuelta|y lo mismo de regreso|mismo de regreso|"
        "de regreso lo mismo|de vuelta lo mismo|regreso lo mismo|regreso igual|vuelta igual|"
        "de regreso igual|de vuelta igual|igual para regresar|regresamos igual|volvemos igual|"
        "lo mismo pa regresar|lo mismo para volver|el mismo camino de vuelta|"
        "mismo camino de regreso|mismo camino de vuelta|mismo tiempo de regreso|"
        "mismo tiempo de vuelta|regresamos por el mismo camino|volvemos por el mismo camino|"
        "regreso por el mismo camino|a casa por el mismo camino|la vuelta igual|el regreso igual|"
        "la vuelta lo mismo|el regreso lo mismo|lo mismo al regreso|otro tanto de regreso|otro "
        "tanto de vuelta|el mismo camino de "
        "regreso"),
    ROW(ITEM_HOMEWARD, 0,
        "de regreso|de vuelta|regreso|vuelta|al regreso|de vuelta a casa|"
        "de regreso a casa|a casa|para regresar|la vuelta|el regreso|volver"),
    ROW(ITEM_POWER, POWER_WORD_BATTERY,
        "sin enchufe desde|sin enchufe desde entonces|no la he enchufado|no se ha enchufado|no la "
        "he conectado|no se ha conectado|no la hemos enchufado|no la hemos conectado|sin cargar "
        "desde entonces|sin conectar "
        "desde|desenchufar|desconectar|desenchufarlo|desenchufarla|desconectarlo|desconectarla|"
        "desconectados|desenchufados|desenchufadas|pura bateria|la pura bateria|con la pura "
        "bateria|pura pila|con pura pila|con la pila|quite de la pared|la quite de la pared|lo "
        "quite de la pared|quite del enchufe|lo quite del enchufe|la quite del enchufe|saque del "
        "enchufe|quite del cargador|la quite del cargador|lo quite del "
        "cargador|desconectado|desconectada|desenchufado|desenchufada|con bateria|en bateria|con "
        "pila|"
        "jalo el cable|jale el cable|jalaron el cable|tiro del cable|"
        "desconecte|desconectamos|lo desconecte|la desconecte|con la bateria|usando la bateria|"
        "a pura bateria|a bateria|con pura bateria|desconectado desde|lo desenchufe|la desenchufe|"
        "desenchufe|en baterias|con baterias|fuera del enchufe|desenchufamos|llevo en bateria|"
        "lleva en bateria|llevo desconectado|llevo desconectada|lleva desconectado|"
        "lleva desconectada|sin enchufar|sin conectar|lo desconectamos|llevo usando la bateria|"
        "llevo con bateria|solo con bateria|con solo la bateria|sin corriente"),
    ROW(ITEM_POWER, POWER_WORD_OUT,
        "se fue la luz|la luz se fue|la corriente se fue|la electricidad se fue|la luz se corto|"
        "fallo la luz|no hay luz|sin luz|se corto la luz|apagon|no tenemos luz|se fue la "
        "corriente|"
        "sin electricidad|no hay corriente|no hay electricidad|se fue la electricidad|"
        "corte de luz|nos quedamos sin luz|lleva sin luz|llevamos sin luz|llevo sin luz|"
        "me quede sin luz|estamos sin luz|se nos fue la luz|quitaron la luz|no ha vuelto la luz|"
        "se acaba de ir la luz|se corto la corriente|cortaron la luz|acaba de irse la luz|"
        "se cayo la luz|se me fue la luz|trono el transformador|se cayo la linea|tumbo la linea|"
        "tiro la linea|tumbo los cables|se cayeron los cables|nos cortaron la luz|se cayo el "
        "poste"),
    ROW(ITEM_POWER, POWER_WORD_BACK,
        "volvio la luz|ya volvio la luz|regreso la luz|llego la luz|"
        "ya hay luz|ya regreso la luz|ya llego la luz"),
    ROW(ITEM_POWER, POWER_WORD_WALL,
        "pared|la pared|en la pared|a la pared|enchufe de pared|enchufada en la pared|"
        "enchufado en la pared|enchufadas en la pared|enchufadas a la pared|corriente de la casa|"
        "enchufe de la pared|contacto de pared|toma de pared|cargador de pared|de la pared|"
        "conectada a la pared|conectadas a la pared|toma de la pared|enchufe de la casa|"
        "enchufe del hotel|conectado a la pared|conectada en la pared|contacto de la pared|"
        "enchufada a la pared|enchufado a la pared|cargador de la pared|corriente de pared|"
        "con la pared|enchufe de casa|conectadas en la pared|corriente electrica|"
        "conectado en la pared|tomacorriente|luz de la casa|tomacorriente de pared"),
    ROW(ITEM_POWER, POWER_WORD_CAR,
        "cable del carro|cable del coche|cable del auto|cable de la camioneta|con el cable del "
        "carro|con el cable del coche|con el cable del auto|nada mas en el carro|nomas en el "
        "carro|solo en el carro|solo el carro|nada mas el "
        "carro|nomas el "
        "carro|solo en el coche|solo el coche|puro carro|"
        "dejo en el carro|pongo en el carro|dejo en el coche|con el auto|con el coche|con la "
        "camioneta|con la troca|cargador del carro|cargador de carro|cargador del coche|cargador "
        "de coche|"
        "cargador del auto|adaptador del carro|adaptador del coche|adaptador de coche|"
        "adaptador de carro|conector del coche|conector del carro|encendedor|12 voltios|"
        "enchufado al carro|conectado al carro|conectado al coche|enchufada al carro|"
        "enchufado en el carro|conectada al carro|enchufada en el carro|enchufado al coche|"
        "enchufe del carro|enchufe del coche|toma del coche|toma del carro|cargador para carro|"
        "corriente del carro|corriente del coche|enchufado en el coche|conectada al coche|"
        "encendedor del carro|encendedor del coche|conectado en el carro|cargando en el carro|"
        "cargador de la camioneta|adaptador de 12 voltios|cargandola en el carro|"
        "enchufada en el coche|cargador del camion|con el carro|cargando en el coche|"
        "toma de 12 voltios|enchufe de 12 voltios|adaptador para carro|adaptador para coche|"
        "cargador de auto|conectado en el coche|conectada en el carro|conector de 12 voltios|"
        "cargador de 12 voltios|conectada en el coche|enchufe de la camioneta|contacto del carro|"
        "conectado a la camioneta|cargandose en el carro|cargandola en el coche|adaptador del auto|"
        "enchufada al coche|se conecta al carro|se conecta al coche|se enchufa al carro|"
        "se enchufa al coche|se conecta a la camioneta"),
    ROW(ITEM_POWER, POWER_WORD_PLUG,
        "adaptador|el "
        "adaptador|cable|enchufe|enchufes|enchufado|enchufada|enchufadas|conectado|conectada|"
        "contacto|toma|"
        "con enchufe|con corriente|conectadas|hay enchufe|hay corriente|enchufar|cargador|"
        "con contacto|con luz|enchufarla|enchufarlo|conectarla|conectarlo|en el cargador|"
        "puedo enchufar|puedo conectar|con toma|conecto|enchufo|conectamos|enchufamos|la conecto|"
        "las conecto|lo conecto|la enchufo|las enchufo|lo enchufo|conecte|enchufe la|enchufe las"),
    ROW(ITEM_POWER, POWER_WORD_NONE,
        "sin enchufe|sin enchufes|sin corriente alla|no hay enchufe|no hay enchufes|sin cargador|"
        "sin donde enchufar|sin contacto|sin conexion electrica|no hay donde enchufar|sin cargar|"
        "sin poder cargar|sin toma|no hay contacto|sin poder enchufar|sin donde conectar|"
        "sin donde cargar|no hay donde cargar|no hay donde conectar|sin ningun enchufe|"
        "ningun enchufe|enchufe en el asiento|enchufe del asiento|sin enchufe en ningun lado|"
        "sin contactos|no tiene enchufe|sin cargador de carro|no hay cargador|sin conexion|"
        "sin conectar alla|no se si hay enchufe|sin cargador del carro|no tiene contacto|"
        "sin tomas|contacto en el asiento|usb|no trae enchufe|no hay ningun enchufe"),
    ROW(ITEM_ACTIVITY, ACTIVITY_SLEEP,
        "dormir|dormidito|dormidita|dormido|dormida|durmiendo|toda la noche|duermo|duerme|para "
        "dormir|al dormir|"
        "mientras duermo|dormidos|acostarme|acostada durmiendo|mientras duerme|duermo toda la "
        "noche|"
        "siesta|a dormir|roncando|ronca"),
    ROW(ITEM_ACTIVITY, ACTIVITY_WALKING,
        "caminando|caminar|camino|caminata|andando|a "
        "pie|paseando|camina|caminamos|senderismo"),
    ROW(ITEM_ACTIVITY, ACTIVITY_COUNT,
        "vamos en el carro|vamos en el coche|voy en el carro|voy en el coche|vamos en carro|vamos "
        "en coche|va en el carro|manejando|conduciendo|al volante|en carretera|manejo|manejar|"
        "en carro|en coche|conducir|voy manejando"),
    ROW(ITEM_ACTIVITY, ACTIVITY_FLIGHT,
        "volando|en el avion|en avion|vuelo|avion|en el vuelo|volar"),
    ROW(ITEM_ACTIVITY, ACTIVITY_REST,
        "descansando|sentado|sentada|sentada en|sentado en|sentados en|reposo|en "
        "reposo|acostado|acostada|sentados|"
        "en la banca|en el banco|viendo la tele|viendo la novela|viendo su novela|viendo "
        "novelas|viendo el partido|viendo una "
        "pelicula|viendo tele|en el sofa|en el sillon|quieto|quieta|viendo television|"
        "en mi sillon|en su sillon|en su silla|en la silla|en la mecedora|en mi mecedora|en la "
        "hamaca|"
        "en mi silla|sin moverme|leyendo|tejiendo|sentadita|sentadito|recostado|recostada|"
        "descanso en casa|sin caminar|en descanso|reposando|reposa|sin "
        "moverse|echado|echada|tumbado|"
        "tumbada|recostadito|recostadita|acostadito|acostadita"),
    /* ---- cylinder and flight -------------------------------------------------------------------
     */
    ROW(ITEM_CYLINDER, 0,
        "botellon|botellin|aguja|la aguja|tanque|tanques|cilindro|cilindros|botella|bombona|tanque "
        "de oxigeno|"
        "cilindro de oxigeno|botella de oxigeno|manometro|tanquecito|regulador|"
        "tanque de respaldo|cilindro de respaldo|tanque de reserva|balon|"
        "tanque portatil|garrafa"),
    ROW(ITEM_SIZE, 0, "tamano|tipo|talla|medida"),
    ROW(ITEM_GATE, 0,
        "de puerta de embarque a puerta de llegada|de la puerta de embarque a la puerta de "
        "llegada|de puerta de salida a puerta de llegada|puerta a puerta|de puerta a puerta|de "
        "sala a sala|gate a gate|de gate a gate|gate to gate|incluyendo el rodaje|contando el "
        "rodaje|de puerta de embarque a puerta de "
        "embarque"),
    ROW(ITEM_GATE, 2, "sale de la puerta|sale de puerta|llega a la puerta|deja la puerta"),
    ROW(ITEM_DEPART, 0, "sale de la puerta|sale de puerta|deja la puerta"),
    ROW(ITEM_ARRIVE, 0, "llega a la puerta"),
    ROW(ITEM_GATE, 1,
        "segun el pasaje|segun mi pasaje|el pasaje dice|pasaje dice|dice el pasaje|en el pasaje|"
        "segun mi boleto|segun el tiquete|tiquete dice|segun el ticket|pase de abordar :|boleto "
        ":|itinerario :|segun el boleto|segun el pase de abordar|segun el "
        "billete|en el billete|billete dice|dice el billete|segun la reserva|la reserva dice|segun "
        "el "
        "itinerario|en el pase de abordar|en el boleto|en el itinerario|boleto dice|boleto "
        "marca|boleto pone|segun el boleto|dice el boleto|en el boleto|en el "
        "boleto dice|pase de abordar dice|en el pase de abordar|segun el pase de "
        "abordar|itinerario "
        "dice|segun el itinerario|en el itinerario|en el itinerario dice|"
        "la aerolinea|aerolinea|la aerolinea dice|dice la aerolinea|segun la aerolinea|aerolinea "
        "dice|me dijo la "
        "aerolinea|"
        "la aerolinea dijo|dijo la aerolinea|la aerolinea marca|la aerolinea me dijo|"
        "la aerolinea me dice|dato de la aerolinea|aerolinea pone|me dice la aerolinea"),
    ROW(ITEM_AIR, 0,
        "en el aire|tiempo de vuelo|tiempo en el aire|volando|en aire|de aire|"
        "tiempo volando|de despegue a aterrizaje|del despegue al aterrizaje|"
        "puro vuelo|por el aire"),
    ROW(ITEM_DOOR, 0,
        "de la casa al hotel|de mi casa al hotel|de la casa a la casa|con el taxi y todo|con taxi "
        "y todo|con todo y taxi|contando el taxi|contando los traslados|todo el dia de viaje|con "
        "todo y filas|de casa a hotel|casa a casa|de casa al hotel|de casa a casa|"
        "con todo y traslados|contando traslados"),
    ROW(ITEM_BEHIND, 0,
        "hora mas temprano|horas mas temprano|mas temprano|atrasado|atrasados|hora menos|horas "
        "menos|atras de aca|menos alla|"
        "mas temprano alla|de atraso|menos que aqui|atrasada"),
    ROW(ITEM_AHEAD, 0,
        "hora mas tarde|horas mas tarde|mas tarde|adelantado|adelantados|hora mas|horas mas|mas "
        "alla|mas tarde alla|"
        "adelante|mas que aqui|de adelanto|adelantada"),
    ROW(ITEM_CLAIM, 0,
        "pagina dice|sitio dice|amiga dice|amigo dice|vecina dice|vecino dice|manual dice|"
        "me dijeron que dura|me dijeron que duraba|supuestamente|folleto dice|dicen que dura|"
        "se supone|internet dice|dicen que duran|la caja dice|segun el manual|segun la pagina|"
        "solo dura|nomas dura|solo me dura|nada mas dura|nomas me dura|nada mas me dura|solo duran|"
        "me dura solo|dura solo|apenas dura|apenas me dura|solo aguanta|nomas aguanta|anuncio "
        "dice|hermana dice|hermano dice|le dura|segun ellos"),
};

const size_t lexicon_es_ways_count = sizeof lexicon_es_ways / sizeof lexicon_es_ways[0];
