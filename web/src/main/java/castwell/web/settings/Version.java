package castwell.web.settings;

import java.util.Optional;

/** The program's version, as the build wrote it into the jar. */
public final class Version {
  public static final String TEXT =
      Optional.ofNullable(Version.class.getPackage().getImplementationVersion())
          .orElse("built from source");

  private Version() {}
}
