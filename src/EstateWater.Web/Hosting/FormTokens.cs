using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Components.Forms;

namespace EstateWater.Web.Hosting;

/// <summary>Gives a token to a form that asks for one. The framework's own provider writes a cookie into every page, with or without a form, and no such page can be cached.</summary>
internal sealed class FormTokens(IHttpContextAccessor accessor, IAntiforgery antiforgery) : AntiforgeryStateProvider
{
    /// <inheritdoc/>
    public override AntiforgeryRequestToken? GetAntiforgeryToken()
    {
        // Within a circuit there is no request to answer; live parts call the server without forms.
        if (accessor.HttpContext is not { } context || context.Response.HasStarted)
        {
            return null;
        }

        var tokens = antiforgery.GetAndStoreTokens(context);
        return tokens.RequestToken is { } value ? new AntiforgeryRequestToken(value, tokens.FormFieldName) : null;
    }
}
