package castwell.analysis;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "castwell.analysis", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule PURE =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "java.io..",
              "java.nio..",
              "java.net..",
              "java.sql..",
              "java.util.concurrent..",
              "java.util.logging..",
              "org.slf4j..",
              "castwell.capture..",
              "castwell.web..");

  @ArchTest
  static final ArchRule NO_CLOCK_AND_NO_THREADS =
      noClasses()
          .should()
          .dependOnClassesThat()
          .belongToAnyOf(
              Thread.class,
              Runtime.class,
              System.Logger.class,
              java.time.Clock.class,
              java.time.Instant.class)
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");

  @ArchTest
  static final ArchRule NO_CYCLES =
      slices().matching("castwell.analysis.(*)..").should().beFreeOfCycles();
}
