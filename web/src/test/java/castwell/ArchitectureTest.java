package castwell;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.members;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import castwell.capture.station.StationInput;
import castwell.capture.store.Store;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;

/** The rooms and their doors, as DEVELOPERS.md draws them. */
@AnalyzeClasses(
    packages = "castwell",
    importOptions = {DoNotIncludeTests.class, ArchitectureTest.NoTestJar.class})
class ArchitectureTest {

  private static final String ANYTHING_BY_NAME =
      "java.util.Map<java.lang.String, java.lang.Object>";

  /** The broker that other modules' tests use comes in a jar. */
  static final class NoTestJar implements ImportOption {
    @Override
    public boolean includes(Location location) {
      return !location.contains("-tests.jar");
    }
  }

  @ArchTest
  static final ArchRule arrowsPointOneWay =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("analysis")
          .definedBy("castwell.analysis..")
          .layer("capture")
          .definedBy("castwell.capture..")
          .layer("web")
          .definedBy("castwell.web..")
          .whereLayer("web")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("capture")
          .mayOnlyBeAccessedByLayers("web")
          .whereLayer("analysis")
          .mayOnlyBeAccessedByLayers("web", "capture");

  @ArchTest
  static final ArchRule noRoomsInACircle =
      slices().matching("castwell.(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule sqlOnlyInTheStore =
      noClasses()
          .that()
          .resideOutsideOfPackage("castwell.capture.store..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.sql..", "org.jdbi..", "org.sqlite..");

  @ArchTest
  static final ArchRule serialPortsOnlyInDevice =
      noClasses()
          .that()
          .resideOutsideOfPackage("castwell.capture.device..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.fazecast..");

  @ArchTest
  static final ArchRule mqttOnlyWhereTheBrokerIsSpokenTo =
      noClasses()
          .that()
          .resideOutsideOfPackage("castwell.capture.publish.broker")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.eclipse.paho..");

  @ArchTest
  static final ArchRule webServerOnlyInHttp =
      noClasses()
          .that()
          .resideOutsideOfPackage("castwell.web.http..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("io.javalin..", "jakarta.servlet..", "org.eclipse.jetty..");

  /**
   * Bytes, sentences, passages: each step hands on values, and calls nobody that comes after it.
   */
  @ArchTest
  static final ArchRule whatComesFirstKnowsNothingOfWhatComesAfter =
      noClasses()
          .that()
          .resideInAnyPackage(
              "castwell.capture.wire", "castwell.capture.assembly", "castwell.capture.station")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "castwell.capture.derive",
              "castwell.capture.command",
              "castwell.capture.announce",
              "castwell.capture.daemon");

  @ArchTest
  static final ArchRule assemblyKnowsNothingOfStationsAndTheStore =
      noClasses()
          .that()
          .resideInAnyPackage("castwell.capture.wire", "castwell.capture.assembly")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("castwell.capture.station", "castwell.capture.store");

  /**
   * What is derived is written beside its siblings, and what a person says by a command; keys and
   * browsers that were let in are the web's own.
   */
  @ArchTest
  static final ArchRule theWebWritesNothingByItself =
      noClasses()
          .that()
          .resideInAPackage("castwell.web..")
          .and()
          .resideOutsideOfPackage("castwell.web.access")
          .should()
          .callMethodWhere(
              target(nameMatching("write|writing")).and(target(owner(assignableTo(Store.class)))));

  @ArchTest
  static final ArchRule onlyTheLoopAndItsRecorderDriveStations =
      noClasses()
          .that()
          .resideOutsideOfPackages("castwell.capture.daemon", "castwell.capture.station")
          .should()
          .dependOnClassesThat()
          .areAssignableTo(StationInput.class);

  /** Time comes in as a Clock or a LongSupplier, from where the program is wired. */
  @ArchTest
  static final ArchRule theClockIsInjected =
      noClasses()
          .that()
          .resideOutsideOfPackages("castwell.web.cli", "castwell.web.wiring")
          .should()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .callMethod(LocalDate.class, "now")
          .orShould()
          .callMethod(LocalDateTime.class, "now")
          .orShould()
          .callMethod(Clock.class, "systemUTC")
          .orShould()
          .callMethod(Clock.class, "systemDefaultZone");

  /**
   * Settings are TOML, rows of an export go out one by one, and a chart's marks go to its script.
   */
  @ArchTest
  static final ArchRule jsonOnlyInItsRoom =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              "castwell.capture.view..",
              "castwell.web.settings",
              "castwell.web.table",
              "castwell.web.chart")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.fasterxml.jackson..");

  /** What a list of names and anythings would say is a record. */
  @ArchTest
  static final ArchRule everyShapeIsARecord =
      members()
          .that()
          .areDeclaredInClassesThat()
          .resideOutsideOfPackage("castwell.web.jte") // as its maker wants it
          .should(
              new ArchCondition<>("say of what their maps are") {
                @Override
                public void check(JavaMember member, ConditionEvents events) {
                  String type = generic(member.reflect());
                  boolean isAnything = type.contains(ANYTHING_BY_NAME);
                  events.add(new SimpleConditionEvent(member, !isAnything, type));
                }
              });

  private static String generic(Member member) {
    return member instanceof Field field
        ? field.toGenericString()
        : ((Executable) member).toGenericString();
  }

  /** Shapes know what is stored, and nothing of who tells them. */
  @ArchTest
  static final ArchRule shapesAreToldByOthers =
      noClasses()
          .that()
          .resideInAPackage("castwell.capture.view..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "castwell.capture.publish..",
              "castwell.capture.health..",
              "castwell.capture.intake..",
              "castwell.capture.daemon..");
}
