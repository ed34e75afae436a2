namespace EstateWater.Web.Features.Taking;

/// <summary>Growth stages as a Spanish-speaking fieldworker says them, by modified Eichhorn–Lorenz number.</summary>
public static class StageWords
{
    private static readonly Dictionary<double, string> Words = new()
    {
        [1] = "Yema de invierno",
        [2] = "Se abren las escamas de la yema",
        [3] = "Yema algodonosa",
        [4] = "Brotación",
        [5] = "Roseta de puntas de hoja",
        [7] = "Primera hoja separada",
        [9] = "2 o 3 hojas separadas",
        [11] = "Cuatro hojas separadas",
        [12] = "Cinco hojas separadas, brotes de 10 cm",
        [15] = "Ocho hojas separadas",
        [17] = "Doce hojas separadas",
        [18] = "Catorce hojas, capuchones pálidos",
        [19] = "Empieza la floración",
        [20] = "10 % de capuchones caídos",
        [21] = "30 % de capuchones caídos",
        [23] = "Plena floración",
        [25] = "80 % de capuchones caídos",
        [26] = "Capuchones caídos",
        [27] = "Cuajado",
        [29] = "Bayas como grano de pimienta",
        [31] = "Bayas como chícharo",
        [32] = "Empieza a cerrar el racimo",
        [33] = "Bayas verdes y duras",
        [34] = "Las bayas se ablandan",
        [35] = "Envero",
        [36] = "Azúcar media",
        [37] = "Casi maduro",
        [38] = "Maduro para cosecha",
        [39] = "Sobremaduro",
        [41] = "Después de la cosecha",
        [43] = "Empieza a caer la hoja",
        [47] = "Hoja caída",
    };

    /// <summary>The stage of a number of the list.</summary>
    public static string Spanish(double elStage) => Words[elStage];
}
