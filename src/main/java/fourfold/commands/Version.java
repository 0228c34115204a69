package fourfold.commands;

import picocli.CommandLine.IVersionProvider;

/** The version, as the build wrote it into the jar. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        String version = Version.class.getPackage().getImplementationVersion();
        return new String[] {"fourfold " + (version == null ? "(not packaged)" : version)};
    }
}
