package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * The Debian package, made and installed, its service run, upgraded and removed: see
 * .ci/package-test.
 */
@Tag("package")
class PackageIT {

  @Test
  @Timeout(value = 6, unit = TimeUnit.MINUTES)
  void itsServiceRunsAndAnUpgradeKeepsWhatIsThere() throws IOException, InterruptedException {
    Process trial =
        new ProcessBuilder("sh", ".ci/package-test", "here")
            .directory(Path.of("..").toFile())
            .inheritIO()
            .start();
    assertThat(trial.waitFor()).isZero();
  }
}
