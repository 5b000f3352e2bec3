#include "persons.h"

const char person_words[] =
    " he hes she shes him her his hers dad dads daddy mom moms mum mums mother father husband wife "
    "hubby grandma grandpa granny nana son daughter brother sister ella papa papi mama mami madre "
    "padre esposo esposa marido mujer hijo hija abuelo abuela abuelito abuelita hermano hermana "
    "suegro suegra senor senora ";
