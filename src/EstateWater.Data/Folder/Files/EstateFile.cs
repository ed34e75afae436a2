using System.Text.Json;
using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>estate.json</c>: the estate itself.</summary>
internal static class EstateFile
{
    public const string Name = "estate.json";

    private static readonly Column EstateName = new("name") { IsRequired = true };
    private static readonly Column TimeZone = new("time_zone") { IsRequired = true };
    private static readonly Column Country = new("country");
    private static readonly Column Units = new("display_units");
    private static readonly Column[] Columns = [EstateName, TimeZone, Country, Units];

    public static Estate? Read(FolderScan scan)
    {
        if (JsonScan.Open(scan, Name) is not { } json)
        {
            return null;
        }

        try
        {
            return ReadEstate(scan, json);
        }
        catch (JsonException broken)
        {
            json.Report(broken);
            return null;
        }
    }

    public static void Write(FolderOutput output, Estate estate) => output.Json(Name, indented: true, json =>
    {
        json.WriteStartObject();
        json.WriteString(EstateName.Name, estate.Name);
        json.WriteString(TimeZone.Name, estate.TimeZone);
        if (estate.Country is { } country)
        {
            json.WriteString(Country.Name, country);
        }

        json.WriteString(Units.Name, Words<DisplayUnits>.Of(estate.DisplayUnits));
        json.WriteEndObject();
    });

    private static Estate? ReadEstate(FolderScan scan, JsonScan json)
    {
        using var document = JsonDocument.Parse(json.Bytes);
        if (document.RootElement.ValueKind != JsonValueKind.Object)
        {
            scan.Report(Name, 1, Defect.WholeFile, "must be an object with name and time_zone");
            return null;
        }

        var members = new JsonMembers(scan, Name, json.MemberLine, document.RootElement, Columns);
        var zone = members.Text(TimeZone);
        if (zone is not null)
        {
            SetTimeZone(scan, members, zone);
        }

        return new Estate
        {
            Name = members.Text(EstateName) ?? "",
            TimeZone = zone ?? "",
            Country = members.Text(Country),
            DisplayUnits = members.Choice<DisplayUnits>(Units) ?? default,
        };
    }

    private static void SetTimeZone(FolderScan scan, JsonMembers members, string id)
    {
        if (TimeZoneInfo.TryFindSystemTimeZoneById(id, out var zone) && zone.HasIanaId)
        {
            scan.TimeZone = zone;
        }
        else
        {
            members.Report(TimeZone, $"'{id}' is not an IANA time zone; write it like Africa/Johannesburg");
        }
    }
}
