#include "persons.h"

const char person_words[] =
    " he hes she shes him her his hers dad dads daddy mom moms mommy mum mums mummy mother mothers "
    "father fathers husband husbands hubby wife wifes partner friend grandma grandmas grandmother "
    "gran granny nana grandpa grandpas grandfather gramps aunt auntie uncle sister brother son "
    "daughter baby ella mama mami madre papa papi padre esposo esposa marido mujer hijo hija bebe "
    "abuelo abuela abuelito abuelita suegro suegra tio tia hermano hermana amigo amiga senor "
    "senora ";
