using EstateWater.Data.Model;

namespace EstateWater.Web.Access;

/// <summary>The page on which each role begins.</summary>
/// <param name="endpoints">All addresses of the program.</param>
public sealed class Landing(IEnumerable<EndpointDataSource> endpoints)
{
    private const string Readings = "/readings";

    /// <summary>Where someone of a role begins.</summary>
    public string Of(PersonRole role) => role switch
    {
        PersonRole.Owner => "/owner",
        PersonRole.Manager => "/week",
        PersonRole.Irrigator => "/sets",
        PersonRole.Technician when Serves(Readings) => Readings,
        _ => "/",
    };

    private bool Serves(string path) => endpoints.SelectMany(source => source.Endpoints).OfType<RouteEndpoint>().Any(e => e.RoutePattern.RawText == path);
}
