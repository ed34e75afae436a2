using Microsoft.EntityFrameworkCore.Design;

namespace EstateWater.Data.Store;

/// <summary>Lets the migration tool make a context; it never opens the file.</summary>
internal sealed class DesignTimeFactory : IDesignTimeDbContextFactory<EstateDb>
{
    public EstateDb CreateDbContext(string[] args) => DatabaseSetup.Open("design-time.db");
}
