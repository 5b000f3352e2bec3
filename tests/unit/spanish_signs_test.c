/*
 * What the warning signs of kb/signs/es must catch and must let pass, by the published lists of the
 * facts, sections E1 to E3: each entry as it stands there and in lay wordings (common practice, no
 * source; to be reviewed by native speakers).
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
                  is_shown ? match.sign->file : "no sign");
}

static const char *const emergencies[] = {
    /* E1: trouble breathing */
    "no puedo respirar", "me falta el aire", "me ahogo", "me cuesta respirar", "le falta aire",
    "me esta costando un monton respirar", "mi viejita ya casi no respira ayuda",
    "no agarro aire por mas que le hago", "ando muy agitado y no me entra el aire",
    "mi papa dejo de respirar", "ya no respira", "respira bien feo mi esposo",
    "no puede ni hablar de lo agitada que esta", "me estoy aogando", "siento que me asfixio",
    "no ai aire me aogo", "nopuedo respirar", "le chilla el pecho y no agarra aire",
    /* common practice, no source: lost or stuck outdoors; fainting in other words */
    "estamos atorados en la telecabina", "perdimos el camino", "nos quedamos atrapados en la nieve",
    "nos perdimos en el monte y ya oscurecio", "se me fue el mundo tantito",
    /* E1: chest pain or pressure */
    "me duele el pecho", "presion en el pecho", "dolor de pecho",
    "traigo un dolor muy feo en el pecho", "siento como si alguien se me sentara en el pecho",
    "a mi marido le aprieta el pecho desde la cena", "me esta doliendo el corazon",
    "creo que le esta dando un infarto", "me duele el brazo izquierdo y la quijada",
    "tengo una opresion aqui en medio", "me punza el corazon cada que camino", "pecho muy apretado",
    /* E1: faint, unconscious, cannot wake */
    "se me desmayo mi mama", "se desmayo", "no despierta", "no responde", "se cayo y no habla",
    "mi esposo esta tirado y no reacciona", "por mas que lo muevo no abre los ojos",
    "perdio el conocimiento hace un minuto", "le dio un patatus a mi suegra",
    "se puso los ojos en blanco y se fue", "lo estoy sacudiendo y no despierta",
    "mi abuelita esta inconsiente", "no puedo despertar a mi papa",
    /* E1: confusion, very drowsy */
    "esta confundido", "dice cosas raras", "muy dormido", "mi mama no sabe donde esta",
    "mi papa no me reconoce", "anda como ido desde la manana", "esta hablando puras incoherencias",
    "no se puede mantener despierta", "mi esposa esta toda desorientada",
    "amanecio bien rara no sabe que dia es", "esta ida",
    /* E1: blue lips or fingers */
    "labios azules", "labios morados", "unas moradas", "tiene los labios moraos",
    "se le pusieron azules los dedos", "mi bebe se puso morado", "se esta poniendo gris",
    "trae la boca bien morada", "las uñas se le ven azules", "tiene la cara ceniza",
    "los labios se le ven negros",
    /* E1: coughing or vomiting blood; E2: pink or frothy spit */
    "tose sangre", "escupe sangre", "vomita sangre", "esta tosiendo y le sale sangre",
    "le sale sangre por la boca", "espuma rosada", "flema rosada", "la flema le sale con sangre",
    "saca espuma por la boca", "devolvio sangre", "estoy escupiendo como rosita la flema",
    /* E3: face, arm, speech, sight */
    "cara caida", "cara chueca", "habla raro", "no mueve el brazo", "medio cuerpo dormido",
    "se le chueco la boca a mi papa", "no puede levantar la mano izquierda",
    "se le traba la lengua y no se le entiende", "se le durmio media cara",
    "de repente ya no puede hablar", "creo que es un derrame cerebral",
    "no siento la pierna derecha", "de pronto no veo de un ojo",
    /* E2: staggering */
    "camina como borracho", "no puede caminar derecho", "se va de lado cuando camina",
    "se tambalea y se agarra de la pared",
    "mi hermano anda como si estuviera tomado y no tomo nada", "pierde el equilibrio a cada paso",
    /* E1: sudden severe pain */
    "el peor dolor de cabeza", "es el peor dolor de mi vida", "me va a reventar la cabeza",
    "un dolor insoportable en la espalda", "no aguanto el dolor", "mi esposo se retuerce de dolor",
    /* E1: bleeding that will not stop */
    "no para de sangrar", "hay mucha sangre no se detiene",
    "le sale un chorro de sangre de la pierna", "se esta desangrando",
    "la herida no deja de sangrar",
    /* E1: choking */
    "se atraganta", "se atraganto con un pedazo de carne",
    "tiene algo atorado en la garganta y no respira", "se esta ahogando con la comida",
    "mi nino se trago una moneda y se ahoga",
    /* E1: burn, fire */
    "se quemo la cara", "se prendio la manguera en su cara", "hay fuego en el cuarto",
    "la canula agarro fuego", "esta saliendo mucho humo de la maquina",
    "se esta quemando la cabana", "se queme el bigote con el oxigeno prendiendo un cigarro",
    /* E1: head injury, poison */
    "se pego en la cabeza y sangra", "mi mama se cayo de las escaleras y no se levanta",
    "se descalabro", "chocamos en la carretera mi esposo esta mal", "se tomo todas las pastillas",
    "mi nieto se trago la pila", "tomo cloro por error", "la alarma de monoxido esta sonando",
    /* E1: seizure */
    "convulsiones", "le dio un ataque", "esta convulcionando",
    "no deja de temblar y tiene los ojos volteados", "le dio otro ataque de epilepsia",
    "esta tieso y se sacude todo",
    /* E1: severe allergic reaction */
    "se le hincha la garganta", "se le esta cerrando la garganta", "tiene la lengua hinchada",
    "le dio una reaccion alergica bien fuerte", "la cara se le puso hinchadisima y no respira bien",
    /* E1: wish to die or to hurt */
    "me quiero morir", "quiero matarme", "no quiero vivir", "ya no quiero seguir viviendo",
    "estoy pensando en quitarme la vida", "mejor estaria muerta",
    "mi hijo dice que se quiere matar", "ya no le veo sentido a la vida",
    /* asks for help, gravely ill */
    "manden una ambulancia", "me estoy muriendo", "es una emergencia", "ayuda se muere mi esposo",
    "llamen al 911", "auxilio", "se puso muy mal mi papa", "mi mama se puso mal de repente",
    "esta muy grave",
    /* no oxygen, low oxygen, a battery that smokes */
    "ya no tenemos oxigeno", "se nos acabo el oxigeno", "no me queda nada de oxigeno",
    "me quede sin oxigeno", "se fue la luz y no tengo bateria ni tanque",
    "la bateria esta echando humo", "la pila silba y huele a quemado",
    "le esta bajando mucho la saturacion", "trae bajo el oxigeno de la sangre", "satura muy bajo",
    /* two languages in one text; by ear; in panic; amid other words */
    "mi mama no puede breathe", "my mama no respira", "kiero morir", "no dispierta mi mama",
    "se desmallo mi esposo", "le duele el pexo", "me duele mucho el pechooo",
    "NO PUEDO RESPIRAR AYUDENME", "no, no respira", "no mi esposo no despierta",
    "no se me duele el pecho", "no se que tiene pero no responde",
    "tengo fiebre y me duele el pecho al respirar",
    /* an alarm in the house tells of smoke as well as smoke does */
    "suena la alarma de humo", "el detector de humo no para de pitar",
    "esta chillando el detector de incendios en el pasillo",
    "gracias por el cargador, todo bien. Oiga mi esposo dice que le aprieta el pecho",
    /* as they came to mind once the signs were written */
    "oigan mi suegro no esta respirando bien que hago",
    "me despertó mi mujer porque siente que se asfixia",
    "ya ni puede platicar de lo mal que respira", "siento que el aire no me llega a los pulmones",
    "mi niña respira como si hubiera corrido un maraton y esta acostada",
    "ahi va otra vez, no jalo aire", "le duele mucho aqui en el pecho del lado del corazon",
    "tengo un peso horrible en el pecho que me sube al cuello",
    "mi papa se esta agarrando el pecho y esta palido",
    "el abuelo no se levanta de la cama y no contesta", "se fue de espaldas y quedo sin sentido",
    "mi tia se desmayo en el baño de la cabaña", "no logro que mi mama abra los ojos",
    "anda todo perdido mi papá, no sabe ni en donde estamos parados",
    "mi esposa esta diciendo barbaridades y no me reconoce",
    "mi hermano camina todo chueco y se cae",
    "esta super dormida y cuando la despierto se vuelve a dormir y dice tonterias",
    "se le ven los labios entre azul y morado",
    "mi esposo trae las uñas moradas y los labios tambien",
    "esta escupiendo flemas con sangre desde la mañana", "le salio espuma rosa al toser",
    "se le cayo la mitad de la cara", "no le entiendo nada a mi papa habla como borracho",
    "mi mama no puede mover un brazo", "me esta dando el peor dolor de cabeza que he tenido",
    "tiene un dolor tan fuerte que esta gritando", "le sale muchisima sangre y no la podemos parar",
    "se esta ahogando con un pedazo de bistec", "mi bebe se trago algo y esta morado",
    "se prendió el oxigeno y se quemo la nariz", "hay humo en la cabaña y huele a cable",
    "se resbalo en el hielo y se pego bien fuerte en la cabeza",
    "se tomo un frasco entero de pastillas", "mi hijo esta convulsionando en el piso",
    "comio cacahuates y se le esta hinchando la garganta", "ya no quiero vivir, esto no es vida",
    "mi papa dice que mejor se mata", "necesito una ambulancia en la cabaña 9",
    "mi mama se esta muriendo ayudenme", "se puso malisimo mi abuelo",
    "ya se nos acabo todo el oxigeno y no hay otro tanque",
    "la maquina no sirve y el tanque esta vacio", "estamos sin luz y sin baterias",
    "la bateria esta humeando", "trae la saturacion por los suelos",
    "la maquina se apago y no puede respirar", "tengo el oxigeno bien bajito dice el aparatito",
    "se le fue el habla de repente", "le tiembla todo el cuerpo y no reacciona",
    "tengo escalofrios y fiebre de 40", "mi amá no despierta q hago",
    "no a despertado y ya son las 2 de la tarde", "le falta mucho el aigre",
    "se esta aogando mi ijo", "me duelle el pecho", "k ago mi esposo no resp onde",
    "help mi mama no respira", "por favor ayuden el señor de al lado se desmayo",
    "hola buenas, quería extender la renta. ah y mi papá amaneció con dolor en el pecho",
    "todo muy bonito pero mi esposa se desmayo hace rato",
    "me esta faltando la respiracion desde la tarde", "no respira mi señora por el amor de dios",
    "el señor de la habitacion 3 dice que se ahoga", "anda con la boca abierta buscando aire",
    "cuando se acuesta dice que se asfixia y se tiene que sentar",
    "mi papito ya respira bien poquito", "siento el pecho como si me lo estuvieran estrujando",
    "tiene dolor en el pecho y le baja por el brazo",
    "mi mama se toca el pecho y dice que le duele un monton", "le dio un infarto creo ayuda",
    "mi abuelita no quiere despertar y le hablo y le hablo",
    "se quedo sin conocimiento mi compadre", "lo encontre en el piso y no me responde",
    "mi hijo se desvanecio al pararse", "no sabe quien soy mi propia madre",
    "mi jefe esta desvariando y ve gente que no hay",
    "no puede sostenerse de pie se va para los lados", "tiene la boca y las manos moradas",
    "se le estan poniendo los labios grises", "arrojo sangre por la boca",
    "escupio una flema rosada con espuma", "tiene un lado de la cara dormido y no habla bien",
    "se le enredan las palabras de repente", "no siente las piernas y esta orinado",
    "de la nada le dio un dolor insoportable de cabeza",
    "tiene un dolor horrible en la barriga y suda frio",
    "no le podemos parar la sangre de la pierna", "se atoro con una pastilla y no puede respirar",
    "se nos incendia la cabaña", "se quemo la cara con la canula",
    "cayo de la escalera y se rompio la cadera", "chocamos y mi mama esta sangrando",
    "le dieron convulsiones otra vez", "tiene la cara y los labios bien hinchados y ronchas",
    "quisiera estar muerta", "me voy a matar", "pensamientos de quitarme la vida",
    "pidan una ambulancia rapido", "mi esposo se muere ayudenme por favor",
    "vengan pronto esta muy grave", "mi suegro se puso grave",
    "nos quedamos sin nada de oxigeno en el camino", "el tanque se acabo y la maquina no enciende",
    "la pila esta sacando chispas", "el oxigeno de mi mama esta por los suelos",
    "la saturacion le baja y le baja", "no tiene pulso", "no mi papa no respira",
    "se ahoga se ahoga", "ya no puedo mas no me entra aire",
    /* joined to other things without a comma */
    "una pregunta de la bolsa y el cable del cargador porque mi papa no responde y salimos manana",
    "gracias por la ayuda la bateria nueva jala bien pero me quiero matar y no se que hacer",
    "hace pausas largas cuando duerme", "mi esposo dormido hace pausas y luego da un resoplido",
    "no trae pulso", "pulso no trae", "le subi el flujo y ahora esta muy dormida",
    "le aumente el oxigeno y no se le quita el sueño, cabecea", "estoy embarazada y manchando",
    "embarazada, con sangrado", "aire", "se nos poncho la llanta en la carretera y esta nevando"};

static const char *const clinical[] = {"me siento mareado",
                                       "me duele la cabeza",
                                       "mi esposa tiene nauseas desde que llegamos",
                                       "vomito dos veces",
                                       "amaneci con mucho dolor de cabeza",
                                       "no me siento bien",
                                       "traigo los pies hinchados",
                                       "me sangra la nariz",
                                       "tengo el corazon acelerado",
                                       "le puedo subir al oxigeno",
                                       "puedo bajarle a 1 para que dure mas",
                                       "lo subi a 3",
                                       "en que numero lo pongo para dormir",
                                       "necesito mas oxigeno",
                                       "puedo tomar vino con la maquina",
                                       "puedo tomarme mi pastilla para dormir",
                                       "estoy embarazada puedo usarlo",
                                       "mi esposo puede usar mi oxigeno un rato",
                                       "puedo dormir sin el oxigeno",
                                       "me puedo banar sin la canula",
                                       "lo apago a ratos para que rinda la bateria",
                                       "mi mama se quita el oxigeno en la noche",
                                       "tiene mucha tos y fiebre",
                                       "no ha dormido nada",
                                       "mi papa no quiere comer",
                                       "anda muy cansada",
                                       "a mi mama le duele la cabeza desde que subimos",
                                       "me siento debil y sin hambre",
                                       "se le hinchan los pies a mi papa",
                                       "puedo subirle al 3 si me canso",
                                       "le bajo al 1 para ahorrar?",
                                       "puedo tomar una copa de vino",
                                       "se me olvido tomar la pastilla del corazon",
                                       "mi esposa esta embarazada de 5 meses",
                                       "puede usarlo mi hermano un rato",
                                       "puedo bañarme sin la canula",
                                       "anoche dormi sin el oxigeno",
                                       "me sangra la nariz por lo seco",
                                       "tengo el corazon muy acelerado",
                                       "mi hija vomito toda la noche",
                                       "me mareo al levantarme",
                                       "tengo tos y flemas",
                                       "no puedo dormir en la altura",
                                       "de verdad necesito el oxigeno?"};

static const char *const equipment[] = {"no sale oxigeno",
                                        "la maquina no prende",
                                        "se apago el aparato",
                                        "no deja de pitar",
                                        "se paro el concentrador",
                                        "no sale nada por la manguera",
                                        "se fue la luz",
                                        "no hay luz en toda la cabana",
                                        "la bateria esta bien caliente",
                                        "se hincho la bateria",
                                        "la bateria se mojo",
                                        "se me cayo el equipo al agua",
                                        "dejo de funcionar",
                                        "no jala la maquina",
                                        "ya no prende el aparatito",
                                        "sigue sonando la alarma",
                                        "se corto la corriente",
                                        "no llega flujo a la nariz",
                                        "la maquina me da toques",
                                        "le puse aceite a la valvula del tanque",
                                        "tengo crema en las manos y voy a abrir el tanque",
                                        "el tanque esta silbando",
                                        "hay una fuga en el cilindro",
                                        "la valvula del tanque no cierra",
                                        "la aguja esta en rojo",
                                        "la aguja del cilindro ya esta en rojo",
                                        "no abre la valvula del tanque",
                                        "la llave del cilindro no abre",
                                        "dice baja pureza",
                                        "me sale servicio requerido",
                                        "sale oxigeno bajo",
                                        "dice no detecta respiracion",
                                        "el enchufe no da corriente, ultima pila 30%",
                                        "se corta sola la maquina a cada rato"};

static const char *const harmless[] = {
    "hay detector de humo en la cabana",
    "la pila del detector de humo se acabo",
    "no prende la calefaccion",
    "no quiero despertarlo, como cambio la bateria",
    "me muero de risa",
    "me muero de hambre a que hora abren",
    "se murio la bateria",
    "se murio mi celular",
    "casi me da un infarto con la cuenta",
    "me quita el aliento la vista",
    "no manches me ahogo de risa",
    "la vista desde aqui me dejo sin aliento",
    "me muero por esquiar",
    "me muero de sueno",
    "cuanto dura la bateria",
    "se puede cargar en el carro",
    "puedo llevarlo en el avion",
    "a que hora cierran",
    "donde devuelvo el equipo",
    "no tengo dolor de pecho solo pregunto por el cargador",
    "sin dolor de pecho",
    "no me falta el aire, todo bien",
    "no me duele nada",
    "mi esposo respira bien gracias",
    "como limpio la canula",
    "como cambio el filtro",
    "la luz azul esta prendida que significa",
    "se pone morada la luz",
    "que significa la luz roja",
    "cuanto pesa la maquina",
    "cuantas baterias trae",
    "puedo fumar cerca",
    "que tan lejos del fuego debe estar",
    "podemos prender la chimenea",
    "puedo cocinar con gas",
    "hay detector de humo en la cabana",
    "si se va la luz que hago",
    "que pasa si se apaga",
    "que pasa si se moja",
    "que hago si no sale oxigeno",
    "como se prende",
    "como se apaga",
    "hace mucho ruido es normal",
    "se oye un ruido raro pero trabaja bien",
    "como apago la alarma",
    "que quiere decir el pitido",
    "cuanto tarda en cargar",
    "cuanto oxigeno me queda",
    "puedo extender la renta dos dias",
    "cuanto cuesta otra semana",
    "no contestan el telefono de la oficina",
    "nadie contesta en la oficina",
    "no puedo hablar ahorita mandame texto",
    "no hablo ingles",
    "mi papa habla espanol",
    "estoy confundido con los botones",
    "me confundo con las instrucciones",
    "no entiendo el manual",
    "no se donde esta el cargador",
    "no veo nada en la pantalla",
    "la pantalla no responde",
    "el wifi no funciona",
    "no funciona la calefaccion del cuarto",
    "se apago la chimenea",
    "se descompuso el elevador",
    "se quemo el foco del bano",
    "se me cayo el cargador",
    "se me cayo la canula al piso",
    "se cayo el internet",
    "esta cayendo mucha nieve",
    "hoy amanecio muy nublado",
    "el clima se puso feo",
    "la carretera esta muy mal",
    "perdi el cable del cargador",
    "se me perdio la bolsa",
    "me equivoque de direccion",
    "gracias muy amable",
    "hola buenas tardes",
    "ok",
    "si",
    "necesito recibo para mi seguro",
    "necesito otro tubo mas largo",
    "la manguera es muy corta",
    "donde compro mas canulas",
    "cuando es la entrega",
    "ya llegue por el equipo",
    "puede mi hijo recoger la maquina",
    "pueden recoger el equipo en el hotel",
    "quiero devolver los tanques vacios",
    "es seguro dejarlo en el carro caliente",
    "cuantos pies de manguera puedo usar",
    "funciona a 10 mil pies",
    "necesito receta",
    "mi doctor manda la receta manana",
    "me urge la factura",
    "no es una emergencia solo una duda",
    "cual es su numero de emergencia",
    "contacto de emergencia mi hija",
    "salida de emergencia",
    "que voltaje usa",
    "se puede usar con planta de luz",
    "hay que conectarlo para dormir",
    "el aire acondicionado no jala",
    "sin aire acondicionado en el cuarto",
    "boca de la manguera",
    "que numero marca la pantalla de carga",
    "4 luces prendidas",
    "tengo 2 baterias llenas cuanto me duran",
    "mi mama esta feliz con la maquina",
    "a mi esposa le encanto la vista",
    "tomamos la foto en la cima",
    "llegamos bien gracias a Dios",
    "nos salvaron la vida con la entrega rapida",
    "se fue mi vuelo puedo entregarlo manana",
    "que color es el cable",
    "unas bolsas moradas donde van",
    "el estuche gris es suyo o nuestro",
    "mato el tiempo leyendo el manual",
    "buenas tardes a que hora pasan por el equipo",
    "la bateria ya no aguanta nada, me la cambian?",
    "ya casi se me muere el telefono, les marco luego",
    "nos morimos de frio anoche jaja",
    "la vista nos dejo sin aire, preciosa",
    "el niño se quedo dormido con el ruidito de la maquina",
    "mi papa ya respira mucho mejor con el equipo",
    "no tiene fiebre ni dolor, nada mas quiere saber del cargador",
    "me duele el bolsillo con ese precio",
    "cual es el boton rojo",
    "se puso roja la luz del cargador es normal?",
    "le puse la bateria y prendio bien",
    "que significa el triangulo amarillo",
    "de que lado va la canula",
    "la manguera tiene un nudo, la puedo cortar?",
    "cuantas horas me dan 3 pilas",
    "va a nevar, pueden adelantar la entrega?",
    "no encuentro mi confirmacion",
    "mi esposa quiere otro color de estuche",
    "puedo llevarla colgada en el hombro",
    "el carro no tiene encendedor, como la cargo",
    "llegamos tarde al aeropuerto, puedo dejarla ahi?",
    "me cobraron doble",
    "el muchacho que la trajo fue muy amable",
    "en el avion me piden una carta",
    "tengo asientos en la salida de emergencia, hay problema?",
    "como se cuelga la bolsa",
    "se oye como un motorcito",
    "hay que lavar la canula?",
    "me llego humeda la caja pero el equipo seco",
    "le cae el sol en la ventana, pasa algo?",
    "puedo poner la maquina en el closet",
    "se atoro el cierre del estuche",
    "se cayo la reservacion de internet",
    "mi hijo cumple años mañana, llegan temprano?",
    "no me cargaba pero era el enchufe",
    "pueden mandar a alguien que hable español",
    "la alarma de la cabaña nos desperto",
    "mi mama dice que esta muy comoda",
    "quiero matar dos pajaros de un tiro, entrego y rento otro",
    "a mi papa le cuesta trabajo leer la pantalla",
    "me ahorca un poco la correa, se ajusta?",
    "es pesado cargarlo en la montaña",
    "que presion trae el tanque chico",
    "el tanque marca verde",
    "puedo pagar en efectivo",
    "hay cargador para carro",
    "el pulso suena cada vez que inhala",
    "lo dejo conectado toda la noche",
    "sirve a 9500 pies",
    "mi esposo ronca menos con esto",
    "la luz de la bateria parpadea mientras carga",
    "se puede doblar la manguera",
    "que hago con el tanque vacio",
    "nos perdimos buscando su oficina",
    "estamos atorados en el trafico",
    "puedo ponerme vaselina en la nariz",
    "gracias a dios todo salio bien",
    "no gracias",
    "ya pague",
    "cabaña 12",
    "si por favor",
    "feliz año",
    "ya llego el paquete gracias",
    "mi papa amanecio mucho mejor",
    "se puede lavar el estuche",
    "cuantos dias de anticipacion para rentar",
    "hay que firmar algo",
    "puedo recoger en la tarde",
    "la maquina pesa mucho o poco",
    "cual dura mas, la chica o la grande",
    "se me olvido el cargador en el hotel",
    "mandenme otra canula porfa",
    "la canula me lastima las orejas",
    "se resbala la canula de la nariz",
    "como le quito el agua a la manguera",
    "esta sucia la rejilla",
    "puedo usar agua de la llave en el humidificador",
    "se congelo el carro, la meto a la cabaña?",
    "el avion sale a las 7",
    "necesito carta para la aerolinea",
    "me pueden cambiar la bateria por una nueva",
    "esta bateria dura menos que la otra",
    "cuanto es por dia",
    "donde los encuentro en el pueblo",
    "el gps no da con la oficina",
    "me equivoque de boton y se apago la pantalla nada mas",
    "prende en verde, esta bien?",
    "el sonido es bajito, es normal?",
    "se calienta tantito al cargar",
    "suena cuando respiro por la nariz",
    "a mi esposo le gusta dormir con la ventana abierta",
    "nos vamos a quedar dos dias mas",
    "mi vuelo se cancelo",
    "gracias por contestar tan rapido",
    "no se preocupe",
    "manden al muchacho despues de las 4",
    "hablo con un robot?",
    "el codigo de la puerta es 4512",
    "que frio hace aqui",
    "vamos a esquiar mañana",
    "es para mi abuelita de 80 años",
    "tiene manual en español",
    "puedo cargar dos baterias a la vez",
    "no trae el cable de carro",
    "se rompio la bolsa",
    "me dio mucho gusto",
    "ya hice el pago",
    "la factura viene mal",
    "quiero cancelar mi reserva",
    "no me llego el correo",
    "le falta una pieza a la caja",
    "cuando abren",
    "me duele que cierren tan temprano jaja",
    "casi me muero de la risa",
    "la bateria murio a media pelicula pero ya cargo",
    "el celular se me esta muriendo",
    "ni loca subo al telesilla",
    "se fue el señor del internet",
    "perdon, numero equivocado",
    "que barbaridad de nevada",
    "me encanto el equipo",
    "todo en orden",
    "el aparato hace pausas cuando duermo, es normal?",
    "mi aparato no trae modo pulso",
    "traigo las uñas pintadas, sirve el del dedo?",
    "ya se la llevaron al hospital, que hago con el aparato",
    "no le entiendo",
    "como se abre el tanque",
    "el E05 sale y sale, lo apago y vuelve",
    "hay servicio al cuarto",
    "se poncho la llanta pero ya la cambiamos"};

#define COUNT(list) ((int)(sizeof(list) / sizeof((list)[0])))

START_TEST(an_emergency_in_spanish_is_seen)
{
    check_level(emergencies[_i], SIGN_EMERGENCY);
}
END_TEST

START_TEST(what_is_clinical_in_spanish_is_seen)
{
    check_level(clinical[_i], SIGN_CLINICAL);
}
END_TEST

START_TEST(a_unit_in_trouble_in_spanish_is_seen)
{
    check_level(equipment[_i], SIGN_EQUIPMENT);
}
END_TEST

START_TEST(an_ordinary_text_in_spanish_frightens_nobody)
{
    struct sign_match match;

    ck_assert_msg(!shipped_look(harmless[_i], &match), "\"%s\" gave %s", harmless[_i],
                  match.sign->file);
}
END_TEST

START_TEST(an_emergency_is_seen_amid_ordinary_texts)
{
    void *arena = memory_must(talloc_new(NULL));
    const char *before = harmless[_i % COUNT(harmless)];
    const char *after = harmless[(7 * _i + 3) % COUNT(harmless)];

    check_level(memory_format(arena, "%s. %s. %s", before, emergencies[_i], after), SIGN_EMERGENCY);
    check_level(memory_format(arena, "%s\n%s", emergencies[_i], before), SIGN_EMERGENCY);
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("spanish_signs");
    TCase *tests = tcase_create("spanish_signs");
    SRunner *runner = srunner_create(suite);
    int failed;

    /* Loaded once: the tests only read. */
    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, an_emergency_in_spanish_is_seen, 0, COUNT(emergencies));
    tcase_add_loop_test(tests, what_is_clinical_in_spanish_is_seen, 0, COUNT(clinical));
    tcase_add_loop_test(tests, a_unit_in_trouble_in_spanish_is_seen, 0, COUNT(equipment));
    tcase_add_loop_test(tests, an_ordinary_text_in_spanish_frightens_nobody, 0, COUNT(harmless));
    tcase_add_loop_test(tests, an_emergency_is_seen_amid_ordinary_texts, 0, COUNT(emergencies));
    suite_add_tcase(suite, tests);
    /* A process for each text would copy the content each time. */
    srunner_set_fork_status(runner, CK_NOFORK);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
