return await EstateWater.Web.CommandLine.Run(args);
